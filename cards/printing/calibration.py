"""Measuring a printer: a paper in, its pages' bytes out; what was measured in, a shop file out."""

from collections.abc import Mapping, Sequence

from tagend.cards.base.errors import Fault, Refused
from tagend.cards.base.toml_edit import with_value
from tagend.cards.printing.job import DUPLEX, Job, pdf_of
from tagend.cards.words.language import Wording
from tagend.layouts.sheets.calibration import CalibrationWords, Edge, calibration_sheets
from tagend.layouts.sheets.printer import BadPrinter, read_printer
from tagend.layouts.sheets.sheet import Sheet


def calibration_pdf(job: Job, on: str | None, edge: Edge | None, *, true: bool) -> bytes:
    """Return a PDF to measure a printer with, as it prints or as the shop file corrects it.

    `on` names the paper. Raises `Refused`.
    """

    def sheets() -> Sequence[Sheet]:
        return calibration_sheets(job.paper(on), calibration_words(job.wording, true=true), edge)

    duplex = DUPLEX[edge] if edge else "single side"
    title = job.wording.say("printer_check")
    return pdf_of(job, sheets, title=title, duplex=duplex, true=true)


def calibration_words(wording: Wording, *, true: bool) -> CalibrationWords:
    """Return what is said on the pages, as the printer prints them or as they are corrected."""
    last = wording.say("check_corrected" if true else "store_measured")
    return CalibrationWords(
        wording.say("printer_check_front"),
        (*wording.steps("measure_front"), last),
        wording.say("printer_check_back"),
        wording.steps("measure_back"),
        wording.say("combs_behind"),
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
