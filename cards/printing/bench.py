"""A batch and its worksheets in, the bytes of a bench sheet's PDF out."""

from collections.abc import Sequence
from functools import partial

from tagend.cards.batches.batch import Batch
from tagend.cards.faces.batch_head import NEW, BatchHead
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.job import Job, Printed, pdf_of, whole_pages
from tagend.layouts.sheets.sheet import Sheet

__all__ = ["BatchHead", "bench_pdf", "bench_sheets"]


def bench_pdf(
    job: Job, worksheets: Sequence[Worksheet], batch: Batch, on: str | None, head: BatchHead = NEW
) -> Printed:
    """Return a PDF of the bench sheet for a batch of these leaders; `on` names the paper.

    Raises `Refused`.
    """
    names = ", ".join(worksheet.leader.recipe.name for worksheet in worksheets)
    title = job.wording.say("bench_sheet_of", leaders=names)
    make = partial(bench_sheets, job, worksheets, batch, on, head)
    return pdf_of(job, make, worksheets, title=title, true=False)


def bench_sheets(
    job: Job, worksheets: Sequence[Worksheet], batch: Batch, on: str | None, head: BatchHead = NEW
) -> list[Sheet]:
    """Return its pages, for `pdf_of`. Raises `Refused`, and what `pdf_of` turns into it."""
    told, cautions = job.told(worksheets), job.cautions(worksheets)
    return whole_pages(bench_sheet(told, batch, cautions, job.paper(on), job.fonts, head))
