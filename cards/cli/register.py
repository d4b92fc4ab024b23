"""`tagend register`: the leaders that were tied, by age, recipe and lot."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from typing import Literal

import click

from tagend.cards.base.plural import counted
from tagend.cards.book.register import Tied, chosen, read_register
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.disk import read_bytes
from tagend.cards.cli.files import naming
from tagend.cards.cli.options import day_option, today

By = Literal["age", "recipe", "lot"]


@click.command("register")
@click.argument("name", metavar="FILE.csv")
@click.option("--lot", help="Only those with line of this lot.")
@click.option("--recipe", metavar="NAME", help="Only those of this recipe.")
@click.option("--older-than", type=click.IntRange(0), metavar="DAYS", help="Only older ones.")
@click.option(
    "--by",
    type=click.Choice(["age", "recipe", "lot"]),
    default="age",
    show_default=True,
    help="What the list is parted by.",
)
@day_option("--on", help="The day to count from; else today.")
def command(
    name: str,
    lot: str | None,
    recipe: str | None,
    older_than: int | None,
    by: By,
    on: date | None,
) -> None:
    """List the leaders in a register that `tagend labels --register` keeps, the oldest first.

    A lot is that of every spool that the line may have come from. Nylon is to be replaced after
    a season: common practice.
    """
    with naming(name):
        leaders = read_register(read_bytes(name))
    day = on or today()
    before = None if older_than is None else day - timedelta(days=older_than)
    found = sorted(
        chosen(leaders, lot=lot, recipe=recipe, tied_before=before),
        key=lambda leader: (leader.day, leader.number),
    )
    if found:
        click.echo("\n".join(_lines(found, by, day)))
    click.echo(f"{len(found)} of {counted(len(leaders), 'leader')}", err=True)


def _lines(leaders: Sequence[Tied], by: By, day: date) -> Iterator[str]:
    if by == "age":
        yield from _rows(leaders, day)
        return
    for heading in dict.fromkeys(name for leader in leaders for name in _headings(leader, by)):
        yield _printable(heading)
        under = [leader for leader in leaders if heading in _headings(leader, by)]
        yield from (f"  {row}" for row in _rows(under, day))


def _headings(leader: Tied, by: By) -> Sequence[str]:
    if by == "recipe":
        return (leader.recipe,)
    return leader.lots or ("no lot known",)


def _rows(leaders: Iterable[Tied], day: date) -> Sequence[str]:
    rows = [
        (
            f"no. {leader.number}",
            leader.day.isoformat(),
            f"{(day - leader.day).days} days",
            leader.recipe,
            leader.check,
            ", ".join(leader.materials),
            ", ".join(leader.lots),
        )
        for leader in leaders
    ]
    return in_columns([list(map(_printable, row)) for row in rows])


def _printable(text: str) -> str:
    """Return the text without what a terminal obeys: a table may come from anybody."""
    return "".join(char if char.isprintable() else "?" for char in text)
