"""Measuring a printer: a paper in, its pages' bytes out; what was measured in, a shop file out."""

from collections.abc import Mapping
from typing import Literal, TypeAlias

from tagend.cards.base.toml_edit import with_value
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.own_paper import own_paper
from tagend.cards.printing.pages import CREATOR, paper_faults
from tagend.cards.words.language import Wording, wording_of
from tagend.layouts.base.faults import refused
from tagend.layouts.pdf.pdf import Duplex, write_pdf
from tagend.layouts.sheets.calibration import (
    CalibrationWords,
    TooSmallToMeasure,
    calibration_sheets,
)
from tagend.layouts.sheets.printer import corrected, read_printer
from tagend.layouts.stock.stock import paper

Edge: TypeAlias = Literal["long-edge", "short-edge"]

_DUPLEX: dict[Edge, Duplex] = {"long-edge": "long edge", "short-edge": "short edge"}


def calibration_pdf(shop: Shop, on: str | None, edge: Edge | None, *, true: bool) -> bytes:
    """Return a PDF to measure a printer with, as it prints or as the shop file corrects it.

    `on` names the paper. Raises `Refused`.
    """
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        sheet = paper(on or shop.paper or own.stock.defaults["paper"], own.stock)
        try:
            words = calibration_words(wording, true=true)
            sheets = calibration_sheets(sheet, words, with_back=edge is not None)
        except TooSmallToMeasure as error:
            raise refused(str(error), "") from None
        return write_pdf(
            corrected(sheets, own.printer) if true else sheets,
            title=wording.say("printer_check"),
            creator=CREATOR,
            duplex=_DUPLEX[edge] if edge else "single side",
        )


def calibration_words(wording: Wording, *, true: bool) -> CalibrationWords:
    """Return what is said on the pages, as the printer prints them or as they are corrected."""
    last = wording.say("check_corrected" if true else "store_measured")
    return CalibrationWords(
        wording.say("printer_check_front"),
        (*wording.steps("measure_front"), last),
        wording.say("printer_check_back"),
        wording.steps("measure_back"),
    )


def with_measured(data: bytes, measured: Mapping[str, str]) -> bytes:
    """Return a shop file with lengths stored under [printer]; raises `Refused` for wrong ones."""
    read_printer(measured)
    for key in reversed(list(measured)):  # each new one goes first
        data = with_value(data, "printer", key, measured[key])
    return data
