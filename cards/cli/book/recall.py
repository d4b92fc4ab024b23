"""`tagend book recall`: which leaders hold a lot, a spool or a recipe."""

from datetime import date
from typing import TYPE_CHECKING

import click

from tagend.cards.base.days import months_before
from tagend.cards.book.leaders import STATES, Found, Sought, State, recall
from tagend.cards.book.naming import batch_number, numbers, ranges
from tagend.cards.cli.book.leader_lines import leader_json, leader_lines
from tagend.cards.cli.book.shared import book_option, json_option, reading, say_json
from tagend.cards.cli.options import (
    day_option,
    paper_option,
    replace_option,
    shop_option,
)
from tagend.cards.cli.output import check_output, named_file
from tagend.cards.cli.show import show_option
from tagend.cards.disk.clock import today

if TYPE_CHECKING:
    from tagend.cards.printing.job import Job


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
        from tagend.cards.printing.pull import pull_of, pull_pdf

        pull = pull_of(found, sought, on or today(), job.wording)
        write_pdf(output, pull_pdf(job, pull, paper), replace=replace)


def _job(shop: str | None) -> "Job":
    from tagend.cards.cli.files import load_job  # 10 ms, for which few recalls have a use

    return load_job(shop)


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
