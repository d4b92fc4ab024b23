"""What a shop file says of stock, printer and font in; what sheets are laid out with out."""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import NamedTuple

from tagend.cards.practice.shop_file import Shop
from tagend.fonts import own_font
from tagend.layouts.base.faults import Fault, noting, refuse_any, under
from tagend.layouts.sheets.printer import Printer, read_printer
from tagend.layouts.stock.formats import Stock
from tagend.layouts.stock.stock import merge, shipped


class OwnPaper(NamedTuple):
    """The stock a person may name, the person's own first, and what their printer does."""

    stock: Stock
    printer: Printer


@contextmanager
def own_paper(shop: Shop) -> Iterator[OwnPaper]:
    """Give a shop's stock and printer, and set text with its font inside. Raises `Refused`."""
    faults: list[Fault] = []
    stock, printer = shipped(), Printer()
    with noting(faults), under("stock"):
        stock = merge(shop.stock or {})
    with noting(faults), under("printer"):
        printer = read_printer(shop.printer or {})
    refuse_any(faults)
    with ExitStack() as font:
        with under("font", ": "):
            font.enter_context(own_font(Path(shop.font) if shop.font else None))
        yield OwnPaper(stock, printer)


def check_paper(shop: Shop) -> None:
    """Raise `Refused` for what a shop file says of stock, printer or font and cannot be."""
    with own_paper(shop):
        pass
