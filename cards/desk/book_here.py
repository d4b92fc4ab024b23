"""The tying book of the folder: opened for one request, and closed; fields of the page read."""

import sqlite3
from base64 import b64decode
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from datetime import date
from functools import wraps
from typing import Any, TypeVar

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from tagend.cards.base.days import months_before
from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.changes import Change, Moment, changing
from tagend.cards.book.file import opened
from tagend.cards.book.leaders import STATES, Sought
from tagend.cards.book.naming import batch_number, numbers
from tagend.cards.desk.desk import BOOK, Desk
from tagend.cards.desk.page import Json, Shown, wording_here
from tagend.cards.disk.clock import now, today
from tagend.cards.practice.rack_file import Rack
from tagend.cards.recipe.recipe import NAME_MOST
from tagend.cards.tables.read_spools import read_spools
from tagend.cards.words.refusal_words import words_in
from tagend.layouts.base.faults import refused, under

T = TypeVar("T")


@contextmanager
def reading(desk: Desk) -> Iterator[sqlite3.Connection]:
    """Open the book for what only reads: all of it as it is at one moment."""
    with opened(str(desk.path(BOOK))) as db:
        db.execute("BEGIN")
        yield db


@contextmanager
def recording(desk: Desk, said: Json) -> Iterator[Change]:
    """Make one change of the book, by whom the page says, or none of it."""
    with opened(str(desk.path(BOOK))) as db, changing(db, moment_of(said)) as change:
        yield change


def answer_of(desk: Desk, change: Change) -> dict[str, Any]:
    """Return what the page tells of a change."""
    return {"told": words_in(wording_here(desk).language, change.told)}


def moment_of(said: Json) -> Moment:
    """Return when something is done, and by whom."""
    return Moment(now(), read_field(said, "who", lambda text: plain_text(text, NAME_MOST)))


def read_field(said: Json, name: str, read: Callable[[str], T]) -> T | None:
    """Read a field of the page; None where it is empty. Raises `Refused`, which names it."""
    text = str(said.get(name) or "").strip()
    with under(name):
        return read(text) if text else None


def read_date(text: str) -> date:
    """Read a day as a field for days sends it; raises `Refused`."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise refused(f"{text[:40]!r} is no day", "write one such as 2026-05-31") from None


def with_book(show: Callable[[Desk, Request], Shown]) -> Callable[[Desk, Request], Shown]:
    """Return what shows a screen of the book, and where there is none, how to start one."""

    @wraps(show)
    def shown_or_start(desk: Desk, request: Request) -> Shown:
        there = desk.stamp(BOOK) is not None
        return show(desk, request) if there else RedirectResponse("/book", 303)

    return shown_or_start


def again_of(said: Json) -> tuple[int, ...]:
    """Return the leaders of the book of which one more is to be tied."""
    return read_field(said, "again", lambda text: numbers([text])) or ()


def spools_in(desk: Desk, said: Json) -> Rack | None:
    """Return the spools that a change brings: of a dropped file, or else of the rack's.

    None where neither is asked for.
    """
    if file := said.get("file"):
        name = str(file["name"])
        with under(name[:80], ": "):
            return read_spools(name, b64decode(file["data"]), desk.job().practice)
    return desk.rack() if said.get("rack") else None


def pdf(data: bytes, name: str) -> Response:
    """Answer with a PDF, to be looked at and printed."""
    return Response(
        data, 200, {"content-disposition": f'inline; filename="{name}.pdf"'}, "application/pdf"
    )


def sought_in(asked: Mapping[str, str]) -> Sought:
    """Return what is sought, from the fields of an address; raises `Refused`."""
    state = asked.get("state")
    return Sought(
        lot=read_field(asked, "lot", str),
        spool=read_field(asked, "spool", str),
        recipe=read_field(asked, "recipe", str),
        batch=read_field(asked, "batch", batch_number),
        numbers=read_field(asked, "numbers", lambda text: numbers([text])),
        since=read_field(asked, "since", read_date),
        before=read_field(asked, "months", lambda text: months_before(today(), _months(text))),
        state=state if state in STATES else None,
    )


def _months(text: str) -> int:
    if not text.isdecimal() or int(text[:5]) > 1200:
        raise refused(f"{text[:40]!r} is no number of months", "write one such as 6")
    return int(text)
