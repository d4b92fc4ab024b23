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

_OF_LEADERS = (
    {"section", "spool"},
    {"section", "spoiled"},
    {"section", "spool", "spoiled"},
    {"tied"},
    {"not tied"},
)
_OF_SPOOL = {"spool", "left", "lot", "bought"}


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
    options: dict[str, object] = {
        "section": section,
        "spool": spool,
        "spoiled": spoiled,
        "tied": tied,
    }
    options |= {"not tied": not_tied, "left": left, **of_spool}
    given = {option for option, value in options.items() if value}
    if given not in _OF_LEADERS if named else not {"spool"} < given <= _OF_SPOOL:
        raise click.UsageError(
            "Name leaders with --section and what it was cut from (--spool, or --spoiled), with "
            "--tied or --not-tied; or a --spool with --left, --lot or --bought."
        )
    with recording(book, who) as change:
        if section is not None:
            correct_use(change, named, Used(section=section, spool=spool, spoiled=spoiled))
        elif tied is not None:
            correct_day(change, named, tied)
        elif not_tied:
            untie(change, named)
        else:
            correct_spool(change, spool_called(change, spool or ""), left, says)
        say_change(change, as_json=as_json)
