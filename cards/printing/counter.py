"""A shop's worksheets in, the bytes of a counter sheet's PDF out."""

from collections.abc import Sequence

from tagend.cards.faces.counter import counter_sheet
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.job import Job, pdf_of, whole_pages
from tagend.layouts.sheets.sheet import Sheet


def counter_pdf(job: Job, worksheets: Sequence[Worksheet], on: str | None) -> bytes:
    """Return a PDF of the counter sheet; `on` names the paper. Raises `Refused`."""

    def sheets() -> list[Sheet]:
        faces = counter_sheet(job.told(worksheets), job.imprint, job.paper(on), job.fonts)
        return whole_pages(faces)

    title = job.wording.say("counter_sheet", count=len(worksheets))
    return pdf_of(job, sheets, worksheets, title=title, true=False)
