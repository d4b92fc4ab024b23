"""A batch and its worksheets in, the bytes of a bench sheet's PDF out."""

from collections.abc import Sequence

from tagend.cards.batches.batch import Batch
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.job import Job, pdf_of, whole_pages
from tagend.layouts.sheets.sheet import Sheet


def bench_pdf(job: Job, worksheets: Sequence[Worksheet], batch: Batch, on: str | None) -> bytes:
    """Return a PDF of the bench sheet for a batch of these leaders; `on` names the paper.

    Raises `Refused`.
    """

    def sheets() -> list[Sheet]:
        told, cautions = job.told(worksheets), job.cautions(worksheets)
        return whole_pages(bench_sheet(told, batch, cautions, job.paper(on), job.fonts))

    names = ", ".join(worksheet.leader.recipe.name for worksheet in worksheets)
    title = job.wording.say("bench_sheet_of", leaders=names)
    return pdf_of(job, sheets, worksheets, title=title, true=False)
