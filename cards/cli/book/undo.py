"""`tagend book undo`: the last change taken back."""

import click

from tagend.cards.book.history import undo
from tagend.cards.cli.book.shared import (
    book_option,
    json_option,
    recording,
    say_change,
    who_option,
)


@click.command("undo")
@click.argument("entry", type=click.IntRange(1), required=False)
@who_option
@book_option
@json_option
def command(entry: int | None, who: str | None, book: str, as_json: bool) -> None:
    """Take back the last change that stands; numbers that it gave are not given again.

    With ENTRY, a number of the history, only if that is the last one. An undoing that was the last
    entry can itself be undone so.
    """
    with recording(book, who) as change:
        undo(change, entry)
        say_change(change, as_json=as_json)
