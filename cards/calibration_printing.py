"""Measuring a printer: a paper in, its pages' bytes out; what was measured in, a shop file out."""

from collections.abc import Mapping

from cards.errors import Fault, Refused, refused
from cards.own_paper import own_paper
from cards.printing import CREATOR, paper_faults
from cards.shop_file import Shop
from cards.toml_edit import with_value
from layouts.calibration import Edge, TooSmallToMeasure, calibration_sheets
from layouts.pdf import Duplex, write_pdf
from layouts.printer import BadPrinter, corrected, read_printer
from layouts.stock import paper

# The hyphens within an option are such as no line breaks at.
STORE = (
    "Store what you read: tagend calibrate --store SHOP.toml --front\u2011x \u22120.4mm "
    "--front\u2011y 1mm --rule\u2011x 99.6mm, and so on.",
)
TRUE = (
    "This page is drawn as your shop file corrects it: the rules should now be 100 mm long, the "
    "scales and combs read 0. What a comb still says may be added to back_x or back_y there.",
)
_DUPLEX: dict[Edge, Duplex] = {"long-edge": "long edge", "short-edge": "short edge"}


def calibration_pdf(shop: Shop, on: str | None, edge: Edge | None, *, true: bool) -> bytes:
    """Return a PDF to measure a printer with, as it prints or as the shop file corrects it.

    `on` names the paper. Raises `Refused`.
    """
    with own_paper(shop) as own, paper_faults():
        sheet = paper(on or shop.paper or own.stock.defaults["paper"], own.stock)
        try:
            sheets = calibration_sheets(sheet, TRUE if true else STORE, edge)
        except TooSmallToMeasure as error:
            raise refused(str(error), "") from None
        return write_pdf(
            corrected(sheets, own.printer) if true else sheets,
            title="Printer check",
            creator=CREATOR,
            duplex=_DUPLEX[edge] if edge else "single side",
        )


def with_measured(data: bytes, measured: Mapping[str, str]) -> bytes:
    """Return a shop file with lengths stored under [printer]; raises `Refused` for wrong ones."""
    try:
        read_printer(measured)
    except BadPrinter as bad:
        raise Refused(*(Fault(f.where, f.found, f.instead) for f in bad.faults)) from None
    for key in reversed(list(measured)):  # each new one goes first
        data = with_value(data, "printer", key, measured[key])
    return data
