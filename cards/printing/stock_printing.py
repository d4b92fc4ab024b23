"""A name of stock in, the bytes of a page with its outline out."""

from collections.abc import Iterator

from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.card_sheets import rule_words
from tagend.cards.printing.own_paper import own_paper
from tagend.cards.printing.pages import CREATOR, paper_faults
from tagend.cards.words.language import Wording, wording_of
from tagend.layouts.paper.lengths import in_inches, size_in_mm
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.outline import Stocked, stock_outline
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper
from tagend.layouts.stock.stock import any_stock, paper


def stock_pdf(name: str, shop: Shop) -> bytes:
    """Return a PDF of label sheet, card or paper, true to size. Raises `Refused`."""
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        found = any_stock(name, own.stock)
        page = paper(shop.paper or own.stock.defaults["paper"], own.stock)
        told = (*_facts(found, wording), wording.say("hold_to_light"))
        return write_pdf(
            [stock_outline(found, page, told, rule_words(wording))],
            title=wording.say("measures_of", name=found.name),
            creator=CREATOR,
        )


def _facts(stock: Stocked, wording: Wording) -> Iterator[str]:
    """Yield what a thing is, and its size."""
    size = _size(stock, wording)
    match stock:
        case Paper():
            yield wording.say("paper_of_size", size=size)
        case CardSize():
            yield wording.say("card_of_size", size=size)
        case LabelSheet(on_roll=True):
            yield wording.say("roll_of_size", size=size)
        case LabelSheet(paper=sheet, columns=columns, rows=rows):
            yield wording.say(
                "labels_of_size", count=columns * rows, columns=columns, rows=rows, size=size
            )
            yield wording.say("on_paper", name=sheet.name, size=_size(sheet, wording))


def _size(of: Stocked, wording: Wording) -> str:
    across = in_inches(of.width).removesuffix(" in")
    size = f"{size_in_mm(of.width, of.height)} · {across} × {in_inches(of.height)}"
    return wording.number(size)
