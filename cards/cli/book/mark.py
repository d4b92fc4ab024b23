"""`tagend book mark`: what became of leaders, or of a spool."""

from datetime import date
from typing import cast

import click

from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.correcting import SPOOL_STATES, SpoolState, mark_spool, spool_called
from tagend.cards.book.leaders import STATES, State, mark
from tagend.cards.book.naming import numbers
from tagend.cards.cli.book.shared import (
    book_option,
    json_option,
    recording,
    say_change,
    who_option,
)
from tagend.cards.cli.options import day_option, reading
from tagend.cards.disk.clock import today
from tagend.cards.recipe.recipe import NOTE_MOST
from tagend.layouts.base.faults import refused
from tagend.layouts.base.near_names import suggestion


@click.command("mark")
@click.argument("words", metavar="[NUMBERS]... STATE", nargs=-1, required=True)
@click.option("--spool", metavar="LABEL", help="Mark this spool, and no leaders.")
@click.option(
    "--remark",
    metavar="TEXT",
    callback=reading(lambda text: plain_text(text, NOTE_MOST)),
    help="Such as to whom, or why.",
)
@day_option("--on", help="Since when; else today.")
@who_option
@book_option
@json_option
def command(
    words: tuple[str, ...],
    spool: str | None,
    remark: str | None,
    on: date | None,
    who: str | None,
    book: str,
    as_json: bool,
) -> None:
    """Say that leaders are fished, given or discarded, or tied again: `mark 12-15 discarded`.

    With --spool a spool is opened, empty or bad, or good after all. No batch is cut of one that is
    empty or bad, and `recall --spool` lists what holds it.
    """
    *named, state = words
    known = STATES if spool is None else SPOOL_STATES
    if state not in known:
        raise refused(f"{state[:40]!r} is no state", suggestion(state, known))
    if (spool is None) == (not named):
        what = "Name the leaders, such as 12-15." if spool is None else "Mark leaders or a spool."
        raise click.UsageError(what)
    with recording(book, who) as change:
        if spool is None:
            mark(change, numbers(named), cast(State, state), on or today(), remark)
        else:
            found = spool_called(change, spool)
            mark_spool(change, found, cast(SpoolState, state), on or today(), remark)
        say_change(change, as_json=as_json)
