"""What a search in the tying book has found in, the bytes of a pull sheet's PDF out."""

from tagend.cards.faces.pull import FoundLeader, PullSheet, pull_sheet
from tagend.cards.printing.job import Job, Printed, pdf_of, whole_pages
from tagend.layouts.sheets.sheet import Sheet

__all__ = ["FoundLeader", "PullSheet", "pull_pdf"]


def pull_pdf(job: Job, pull: PullSheet, paper_name: str | None) -> Printed:
    """Return a PDF of what to pull from the wallets. Raises `Refused`."""

    def sheets() -> list[Sheet]:
        return whole_pages(pull_sheet(pull, job.paper(paper_name), job.wording, job.fonts))

    title = job.wording.say("pull_sheet_of", title=pull.title)
    return pdf_of(job, sheets, title=title, true=False)
