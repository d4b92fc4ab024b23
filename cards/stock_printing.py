"""A name of stock in, the bytes of its dimensioned picture out."""

from cards.own_paper import own_paper
from cards.printing import CREATOR, paper_faults
from cards.shop_file import Shop
from layouts.pdf import write_pdf
from layouts.picture import stock_picture
from layouts.stock import any_stock, paper

ADVICE = (
    "Lay the real sheet on this one and hold both against the light. Where they differ, write "
    "your own measures into the shop file, under [stock]."
)


def stock_pdf(name: str, shop: Shop) -> bytes:
    """Return a PDF of label sheet, card or paper, true to size. Raises `Refused`."""
    with own_paper(shop) as own, paper_faults():
        found = any_stock(name, own.stock)
        page = paper(shop.paper or own.stock.defaults["paper"], own.stock)
        sheet = stock_picture(found, page, ADVICE)
        return write_pdf([sheet], title=f"{found.name}: measures", creator=CREATOR)
