"""`tagend book recall`: which leaders hold a lot, a spool or a recipe."""

from calendar import monthrange
from datetime import date
from typing import TYPE_CHECKING

import click

from tagend.cards.book.leaders import STATES, BookLeader, Found, Sought, State, recall
from tagend.cards.book.naming import batch_number, numbers, ranges
from tagend.cards.cli.book.leader_lines import leader_json, leader_lines
from tagend.cards.cli.book.shared import book_option, json_option, reading, say_json
from tagend.cards.cli.options import (
    day_option,
    paper_option,
    replace_option,
    shop_option,
    today,
)
from tagend.cards.cli.output import check_output, named_file
from tagend.cards.cli.show import show_option

if TYPE_CHECKING:
    from tagend.cards.printing.job import Job
    from tagend.cards.printing.pull import PullSheet
    from tagend.cards.words.language import Wording


@click.command("recall")
@click.option("--lot", help="Those that hold line of this lot.")
@click.option("--spool", metavar="LABEL", help="Those that hold line of this spool.")
@click.option("--recipe", metavar="NAME", help="Those of this recipe.")
@click.option("--batch", metavar="NUMBER", help="Those of this batch.")
@click.option("--numbers", "chosen", metavar="NUMBERS", help="Those of these: 12-15,17.")
@day_option("--tied", help="Those tied on this day.")
@day_option("--since", help="Those tied on this day or later.")
@click.option(
    "--older-than",
    type=click.IntRange(0, 1200),
    metavar="MONTHS",
    help="Those tied more than so many months ago.",
)
@click.option("--state", type=click.Choice(STATES), help="Those of which this is told.")
@day_option("--on", help="The day to count from, and of the sheet; else today.")
@click.option("-o", "--output", metavar="OUT.pdf", help="Also write the sheet to pull them by.")
@paper_option
@replace_option
@show_option
@book_option
@json_option
@shop_option
def command(
    lot: str | None,
    spool: str | None,
    recipe: str | None,
    batch: str | None,
    chosen: str | None,
    tied: date | None,
    since: date | None,
    older_than: int | None,
    state: State | None,
    on: date | None,
    output: str | None,
    paper: str | None,
    replace: bool,
    book: str,
    as_json: bool,
    shop: str | None,
) -> None:
    """List the leaders that hold a lot or a spool, or are of a recipe, a batch or an age.

    What is asked for together must all be so. In a lot, a label or a name, spaces, case, signs and
    leading zeros make no difference, unless two are told apart by them.
    """
    sought = Sought(
        lot=lot,
        spool=spool,
        recipe=recipe,
        batch=None if batch is None else batch_number(batch),
        numbers=None if chosen is None else numbers([chosen]),
        tied=tied,
        since=since,
        before=None if older_than is None else months_before(on or today(), older_than),
        state=state,
    )
    job = None if output is None else _job(shop)
    with reading(book) as db:
        found = recall(db, sought)
    if output is not None:
        named_file(output)
        check_output(output, replace=replace)
    if as_json:
        say_json(_json(found))
    else:
        for spool_found in found.spools:
            click.echo(f"{spool_found.told}: {spool_found.diameter.plain} {spool_found.material}")
        click.echo("\n".join(leader_lines(found.leaders)), nl=bool(found.leaders))
    click.echo(_told(found), err=True)
    if output is not None and job is not None:
        from tagend.cards.cli.print_command import write_pdf
        from tagend.cards.printing.pull import pull_pdf

        pull = _pull(found, _title(sought, found), on or today(), job.wording)
        write_pdf(output, pull_pdf(job, pull, paper), replace=replace)


def _job(shop: str | None) -> "Job":
    from tagend.cards.cli.files import load_job  # 10 ms, for which few recalls have a use

    return load_job(shop)


def months_before(day: date, months: int) -> date:
    """Return the same day of the month so many months earlier, or the last day of that month."""
    year, month = divmod(12 * day.year + day.month - 1 - months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def _told(found: Found) -> str:
    number = f"{len(found.leaders)} of {found.of} leaders"
    if not found.leaders:
        return number
    return f"{number}: no. {ranges(leader.number for leader in found.leaders)}"


def _json(found: Found) -> dict[str, object]:
    return {
        "spools": [{"spool": spool.label, "lot": spool.lot} for spool in found.spools],
        "leaders": list(map(leader_json, found.leaders)),
        "numbers": [leader.number for leader in found.leaders],
        "of": found.of,
    }


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


def _pull(found: Found, title: str, day: date, wording: "Wording") -> "PullSheet":
    """Return the sheet of what is found: what to pull from the wallets."""
    from tagend.cards.printing.pull import FoundLeader, PullSheet
    from tagend.cards.words.shopping import spool_name

    sought = {spool.label for spool in found.spools}

    def holds(leader: BookLeader) -> str:
        """Say which of the spools that are looked for it holds; of all, where none is."""
        of = [of for of in leader.drawn if of.spool in sought or not sought]
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
    return PullSheet(title, day, rows)
