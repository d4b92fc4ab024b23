"""What a search in the tying book has found in, the bytes of a pull sheet's PDF out."""

from datetime import date

from tagend.cards.book.leaders import BookLeader, Found, Sought
from tagend.cards.faces.pull import FoundLeader, PullSheet, pull_sheet
from tagend.cards.printing.job import Job, Printed, pdf_of, whole_pages
from tagend.cards.words.language import Wording
from tagend.cards.words.shopping import spool_name
from tagend.layouts.sheets.sheet import Sheet

__all__ = ["FoundLeader", "PullSheet", "pull_of", "pull_pdf"]


def pull_pdf(job: Job, pull: PullSheet, paper_name: str | None) -> Printed:
    """Return a PDF of what to pull from the wallets. Raises `Refused`."""

    def sheets() -> list[Sheet]:
        return whole_pages(pull_sheet(pull, job.paper(paper_name), job.wording, job.fonts))

    title = job.wording.say("pull_sheet_of", title=pull.title)
    return pdf_of(job, sheets, title=title, true=False)


def pull_of(found: Found, sought: Sought, day: date, wording: Wording) -> PullSheet:
    """Return the sheet of what is found: what to pull from the wallets."""
    labels = {spool.label for spool in found.spools}

    def holds(leader: BookLeader) -> str:
        """Say which of the spools that are looked for it holds; of all, where none is."""
        of = [of for of in leader.drawn if of.spool in labels or not labels]
        return ", ".join(dict.fromkeys(spool_name(one.spool, one.lot, wording) for one in of))

    rows = tuple(
        FoundLeader(
            number=leader.number,
            recipe=leader.recipe,
            tied=leader.tied,
            holds=holds(leader),
            state=leader.state,
            remark=leader.remark,
        )
        for leader in found.leaders
    )
    return PullSheet(_title(sought, found) or wording.say("leaders"), day, rows)


def _title(sought: Sought, found: Found) -> str:
    """Return what was looked for, as it is written in the book."""
    lot = found.spools[0].lot if found.spools else None
    said = (
        f"lot {lot}" if sought.lot else "",
        f"spool {found.spools[0].label}" if sought.spool else "",
        sought.recipe or "",
        f"batch {sought.batch}" if sought.batch else "",
        f"tied {sought.tied.isoformat()}" if sought.tied else "",
        f"since {sought.since.isoformat()}" if sought.since else "",
        f"before {sought.before.isoformat()}" if sought.before else "",
        sought.state or "",
    )
    return ", ".join(filter(None, said))
