"""`tagend book correct`: what was really used, tied, or on a spool."""

from datetime import date

import click

from tagend.cards.base.units import Length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.correcting import (
    Used,
    correct_day,
    correct_spool,
    correct_use,
    spool_called,
    untie,
)
from tagend.cards.book.naming import numbers
from tagend.cards.cli.book.shared import (
    book_option,
    json_option,
    recording,
    say_change,
    who_option,
)
from tagend.cards.cli.options import day_option, reading
from tagend.cards.practice.rack_file import read_left


@click.command("correct")
@click.argument("words", metavar="[NUMBERS]...", nargs=-1)
@click.option("--section", type=click.IntRange(1), help="Of these leaders, this section.")
@click.option("--spool", metavar="LABEL", help="That was cut from this spool; or a spool itself.")
@click.option("--spoiled", is_flag=True, help="A piece of it was spoiled, and cut again.")
@day_option("--tied", help="They were tied on this day.")
@click.option("--not-tied", is_flag=True, help="They were never tied: their line is back.")
@click.option(
    "--left",
    metavar="LENGTH",
    callback=reading(read_left),
    help="What is really left on the spool.",
)
@click.option("--lot", callback=reading(lambda text: plain_text(text, 40)), help="The spool's lot.")
@day_option("--bought", help="When the spool was bought.")
@who_option
@book_option
@json_option
def command(
    words: tuple[str, ...],
    section: int | None,
    spool: str | None,
    spoiled: bool,
    tied: date | None,
    not_tied: bool,
    left: Length | None,
    lot: str | None,
    bought: date | None,
    who: str | None,
    book: str,
    as_json: bool,
) -> None:
    """Put the book right: `correct 17 --section 3 --spool "Clear 8b"`, or `--spoiled`.

    Of leaders: the spool that a section was cut from, a spoiled piece, their day, or that they were
    not tied after all. Of a spool: what is left on it, its lot, its day.
    """
    named = numbers(words)
    of_spool = {"lot": lot, "bought": bought}
    says = {column: str(value) for column, value in of_spool.items() if value is not None}
    ways = (section is not None, tied is not None, not_tied, left is not None or bool(says))
    if sum(ways) != 1 or bool(named) == ways[3] or (ways[3] and spool is None):
        raise click.UsageError(
            "Name leaders with --section, --tied or --not-tied; or a --spool with --left or --lot."
        )
    with recording(book, who) as change:
        if section is not None:
            if spool is None and not spoiled:
                raise click.UsageError("Say what it was cut from, or --spoiled.")
            correct_use(change, named, Used(section=section, spool=spool, spoiled=spoiled))
        elif tied is not None:
            correct_day(change, named, tied)
        elif not_tied:
            untie(change, named)
        else:
            correct_spool(change, spool_called(change, spool or ""), left, says)
        say_change(change, as_json=as_json)
