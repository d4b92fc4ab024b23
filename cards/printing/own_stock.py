"""What a shop file says of stock and printer in; what sheets are laid out with out."""

from tagend.cards.practice.shop_file import Shop
from tagend.layouts.base.faults import Fault, noting, refuse_any, under
from tagend.layouts.sheets.printer import Printer, read_printer
from tagend.layouts.stock.formats import Stock
from tagend.layouts.stock.stock import merge, shipped


def own_stock(shop: Shop) -> tuple[Stock, Printer]:
    """Return the stock that a person may name, and what their printer does.

    Raises `Refused` with the faults of both.
    """
    faults: list[Fault] = []
    stock, printer = shipped(), Printer()
    with noting(faults), under("stock"):
        stock = merge(shop.stock or {})
    with noting(faults), under("printer"):
        printer = read_printer(shop.printer or {})
    refuse_any(faults)
    return stock, printer
