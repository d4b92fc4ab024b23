"""All that the book holds in; tables for reading in a spreadsheet out."""

import sqlite3
from collections.abc import Callable, Iterator

from msgspec import Struct

from tagend.cards.book.history import history
from tagend.cards.book.leaders import Sought, recall
from tagend.cards.book.spools import spools
from tagend.cards.book.stored import millimetres

Cell = str | int | float | None


class BookTable(Struct, frozen=True):
    """Rows under their columns; days are ISO 8601, and lengths in mm say so."""

    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def _leaders(db: sqlite3.Connection) -> Iterator[tuple[Cell, ...]]:
    yield "number", "batch", "tied", "recipe", "state", "state_day", "remark", "spools", "lots"
    for one in recall(db, Sought()).leaders:
        labels = dict.fromkeys(of.spool for of in one.drawn)
        day = None if one.state_day is None else one.state_day.isoformat()
        what = (one.number, one.batch, one.tied.isoformat(), one.recipe, one.state, day, one.remark)
        yield *what, "; ".join(labels), "; ".join(one.lots)


def _draws(db: sqlite3.Connection) -> Iterator[tuple[Cell, ...]]:
    yield "spool", "lot", "why", "number", "recipe", "section", "drawn_mm"
    rows = db.execute(
        "SELECT label, lot, kind, draw.leader, recipe.name, section, nm FROM draw "
        "JOIN spool ON spool.id = spool LEFT JOIN leader ON leader.id = draw.leader "
        "LEFT JOIN recipe ON recipe.id = leader.recipe ORDER BY draw.id"
    ).fetchall()
    for *what, nm in rows:
        yield *what, float(millimetres(nm))


def _spools(db: sqlite3.Connection) -> Iterator[tuple[Cell, ...]]:
    days = ("bought", "opened", "empty", "bad")
    yield (
        *("label", "material", "diameter", "strength", "lot", "length", "left", "left_mm"),
        *(*days, "remark"),
    )
    for spool in spools(db):
        strength = None if spool.strength is None else spool.strength.plain
        line = (spool.material, spool.diameter.plain, strength)
        line_left = (spool.length.plain, spool.left.plain, float(spool.left_mm))
        told = (getattr(spool, day) for day in days)
        said = (None if day is None else day.isoformat() for day in told)
        yield spool.label, *line, spool.lot, *line_left, *said, spool.remark


def _history(db: sqlite3.Connection) -> Iterator[tuple[Cell, ...]]:
    yield "entry", "at", "who", "done", "stands"
    for one in history(db):
        yield one.number, one.at, one.who, one.told, "yes" if one.stands else "no"


TABLES: dict[str, Callable[[sqlite3.Connection], Iterator[tuple[Cell, ...]]]] = {
    "leaders": _leaders,
    "draws": _draws,
    "spools": _spools,
    "history": _history,
}


def book_table(db: sqlite3.Connection, name: str) -> BookTable:
    """Return one of `TABLES`."""
    columns, *rows = TABLES[name](db)
    return BookTable(tuple(map(str, columns)), tuple(rows))
