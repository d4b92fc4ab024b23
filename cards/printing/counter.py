"""A shop's worksheets in, the bytes of a counter sheet's PDF out."""

from collections.abc import Sequence

from tagend.cards.faces.counter import Offer, counter_sheet
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.codes import code_of
from tagend.cards.printing.job import Job, Printed, paper_faults, pdf_of, whole_pages
from tagend.cards.words.leader_words import Told
from tagend.layouts.sheets.sheet import Sheet


def counter_pdf(
    job: Job, worksheets: Sequence[Worksheet], on: str | None, *, codes: bool = True
) -> Printed:
    """Return a PDF of the counter sheet; `on` names the paper. Raises `Refused`."""

    def offer(worksheet: Worksheet, told: Told) -> Offer:
        with paper_faults(worksheet.leader.recipe.name):
            return Offer(told, code_of(worksheet.leader, job.practice) if codes else None)

    def sheets() -> list[Sheet]:
        offers = list(map(offer, worksheets, job.told(worksheets)))
        return whole_pages(counter_sheet(offers, job.imprint, job.paper(on), job.fonts))

    title = job.wording.say("counter_sheet", count=len(worksheets))
    return pdf_of(job, sheets, worksheets, title=title, true=False)
