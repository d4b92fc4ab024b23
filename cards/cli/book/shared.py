"""What the commands of the book share: its file opened, a change made and told, orders read."""

import json
import sqlite3
import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import date

import click
from cfractions import Fraction

from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.changes import Change, Moment, changing
from tagend.cards.book.file import opened
from tagend.cards.cli import options
from tagend.cards.disk.clock import now
from tagend.cards.disk.disk import note_input, note_written
from tagend.cards.recipe.recipe import NAME_MOST

book_option = click.option(
    "--book",
    metavar="FILE",
    envvar="TAGEND_BOOK",
    required=True,
    help="The tying book, a .db file.",
)
json_option = click.option("--json", "as_json", is_flag=True, help="As one JSON object.")
who_option = click.option(
    "--who",
    metavar="NAME",
    envvar="TAGEND_WHO",
    callback=options.reading(lambda text: plain_text(text, NAME_MOST)),
    help="Who did it.",
)


@contextmanager
def reading(book: str) -> Iterator[sqlite3.Connection]:
    """Open the book for what only reads: all of it as it is at one moment."""
    with opened(book) as db:
        note_input(book)
        db.execute("BEGIN")
        yield db


@contextmanager
def recording(book: str, who: str | None = None) -> Iterator[Change]:
    """Make a change of the book. What is said of it is out before it is kept.

    So whoever cannot read what was done has nothing done.
    """
    with opened(book) as db, changing(db, moment(who)) as change:
        note_input(book)
        try:
            yield change
            sys.stdout.flush()
        except OSError as error:
            raise OSError(error.errno, f"{error.strerror}; nothing was recorded") from error
        note_written(book)


def say_change(change: Change, *, as_json: bool) -> None:
    """Say what a change did, as the history tells it; one that changed nothing has no entry."""
    if as_json:
        say_json({"entry": change.number if change.any else None, "done": change.told})
    else:
        click.echo(change.told)


def moment(who: str | None) -> Moment:
    """Return when something is done, and by whom."""
    return Moment(now(), who)


def say_json(value: Mapping[str, object]) -> None:
    """Say one object, a line."""
    click.echo(json.dumps(value, ensure_ascii=False, default=_plain))


def _plain(value: object) -> object:
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Fraction):
        return round(float(value), 4)
    raise TypeError(type(value).__name__)
