"""What a shop file says of stock and printer in; what sheets are laid out with out."""

from typing import NamedTuple

from tagend.cards.base.errors import Fault, Refused
from tagend.cards.practice.shop_file import Shop
from tagend.layouts.sheets.printer import BadPrinter, Printer, read_printer
from tagend.layouts.stock.formats import Stock
from tagend.layouts.stock.stock import BadStock, merge, shipped


class OwnStock(NamedTuple):
    """The stock that a person may name, their own first, and what their printer does."""

    stock: Stock
    printer: Printer


def own_stock(shop: Shop) -> OwnStock:
    """Return a shop's stock and printer. Raises `Refused` with the faults of both."""
    faults: list[Fault] = []
    stock, printer = shipped(), Printer()
    try:
        stock = merge(shop.stock or {})
    except BadStock as bad:
        faults += (Fault(f"stock, {f.where}", f.found, f.instead) for f in bad.faults)
    try:
        printer = read_printer(shop.printer or {})
    except BadPrinter as bad:
        faults += (Fault(f"printer, {f.where}", f.found, f.instead) for f in bad.faults)
    if faults:
        raise Refused(*faults)
    return OwnStock(stock, printer)
