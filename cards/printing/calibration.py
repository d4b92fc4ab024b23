"""Measuring a printer: a paper in, its pages' bytes out."""

from collections.abc import Sequence
from typing import Literal, TypeAlias

from tagend.cards.printing.job import DUPLEX, Job, Printed, pdf_of
from tagend.cards.words.language import Wording
from tagend.layouts.sheets.calibration import CalibrationWords, calibration_sheets
from tagend.layouts.sheets.sheet import Sheet

Edge: TypeAlias = Literal["long-edge", "short-edge"]


def calibration_pdf(job: Job, on: str | None, edge: Edge | None, *, true: bool) -> Printed:
    """Return a PDF to measure a printer with, as it prints or as the shop file corrects it.

    `on` names the paper. Raises `Refused`.
    """

    def sheets() -> Sequence[Sheet]:
        words = calibration_words(job.wording, true=true)
        return calibration_sheets(job.paper(on), words, with_back=edge is not None)

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
    )
