"""Leaders in, the page that compares them out: the bytes of its PDF, or of its SVG."""

from collections.abc import Sequence

from tagend.cards.faces.compare import comparison_page
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.drawing import svg_of
from tagend.cards.printing.job import Job, pdf_of, whole_pages
from tagend.layouts.paper.face import Face
from tagend.layouts.sheets.sheet import Sheet


def comparison_pdf(job: Job, worksheets: Sequence[Worksheet], on: str | None) -> bytes:
    """Return a PDF of the page; `on` names the paper. Raises `Refused`."""

    def sheets() -> list[Sheet]:
        return whole_pages([_page(job, worksheets, on)])

    return pdf_of(job, sheets, worksheets, title=_title(job, worksheets), true=False)


def comparison_svg(job: Job, worksheets: Sequence[Worksheet], on: str | None) -> bytes:
    """Return an SVG of the same page. Raises `Refused`."""

    def sheet() -> Sheet:
        (page,) = whole_pages([_page(job, worksheets, on)])
        return page

    return svg_of(job, sheet, worksheets, title=_title(job, worksheets))


def _page(job: Job, worksheets: Sequence[Worksheet], on: str | None) -> Face:
    return comparison_page(job.told(worksheets), job.paper(on), job.fonts)


def _title(job: Job, worksheets: Sequence[Worksheet]) -> str:
    names = ", ".join(worksheet.leader.recipe.name for worksheet in worksheets)
    return job.wording.say("comparison_of", leaders=names)
