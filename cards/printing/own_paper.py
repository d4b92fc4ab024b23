"""What a shop file says of stock, printer and font in; what sheets are laid out with out."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from tagend.cards.base.errors import Fault, Refused, refused
from tagend.cards.practice.shop_file import Shop
from tagend.fonts import BadFont, own_font
from tagend.layouts.sheets.printer import BadPrinter, Printer, read_printer
from tagend.layouts.stock.stock import BadStock, Stock, merge, shipped


class OwnPaper(NamedTuple):
    """The stock a person may name, the person's own first, and what their printer does."""

    stock: Stock
    printer: Printer


@contextmanager
def own_paper(shop: Shop) -> Iterator[OwnPaper]:
    """Give a shop's stock and printer, and set text with its font inside. Raises `Refused`."""
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
    try:
        with own_font(Path(shop.font) if shop.font else None):
            yield OwnPaper(stock, printer)
    except BadFont as bad:
        raise refused(f"{bad.path}: {bad.found}", bad.instead, "font") from None


def check_paper(shop: Shop) -> None:
    """Raise `Refused` for what a shop file says of stock, printer or font and cannot be."""
    with own_paper(shop):
        pass
