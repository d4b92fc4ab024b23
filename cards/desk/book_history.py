"""The history of the book: what was done, as the book tells it, and taken back."""

from functools import partial

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.book.history import history, last_who, undo, undoable
from tagend.cards.desk.book_here import answer_of, reading, recording, with_book
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json, Shown, page, posted, shown, wording_here
from tagend.cards.words.refusal_words import words_in


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/book/history", with_book(history_page)), posted("/book/undo", undo_one)]


def history_page(desk: Desk, request: Request) -> Shown:
    """Show what was done, the last first."""
    with reading(desk) as db:
        entries, who = history(db), last_who(db)
    may = {entry.number for entry in undoable(entries)}
    told = partial(words_in, wording_here(desk).language)
    shown = reversed(entries)
    return page(desk, "book", part="history", entries=shown, may=may, told=told, who=who)


def undo_one(desk: Desk, said: Json) -> Json:
    """Take back an entry, which must be the last that stands, or the very last."""
    with recording(desk, said) as change:
        undo(change, int(said["entry"]))
        return answer_of(desk, change)
