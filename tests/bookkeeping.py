"""A tying book for tests: small recipes, spools and a fresh file; and what holds of any book."""

import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from contextlib import closing, contextmanager
from datetime import date
from pathlib import Path

from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter
from tagend.cards.batches.batch import Order
from tagend.cards.book.changes import Change, Moment, changing
from tagend.cards.book.file import opened, started
from tagend.cards.book.spools import add
from tagend.cards.book.tying import tie
from tagend.cards.practice.rack_file import Rack, Spool, read_left
from tagend.cards.recipe.recipe import Recipe
from tests.written import leader, recipe, section

NOW = Moment("2026-05-01T08:00:00+00:00", "Ada")
TODAY = date(2026, 5, 1)
TABLES = ("spool", "recipe", "batch", "leader", "draw")

# Two kinds of line; the second recipe takes one of them twice.
RECIPES = {
    "Short": ("20 in", "10 in"),
    "Long": ("30 1/2 in", "14 1/3 in"),
    "Double": ("12 in", "8 in", "20 in"),
}


def written(name: str) -> Recipe:
    """Return one of `RECIPES`."""
    lines = ("0.020 in", "0.012 in", "0.012 in")
    parts = (section(length, lines[at]) for at, length in enumerate(RECIPES[name]))
    return replace(recipe(*parts, lengths="cut"), name=name)


def order(name: str, count: int) -> Order:
    return Order(leader(written(name)), count)


def spool(
    label: str, left: str = "20 m", lot: str | None = None, diameter: str = "0.020 in"
) -> Spool:
    return Spool(label, "nylon", parse_diameter(diameter), read_left(left), lot=lot)


SPOOLS = (
    spool("Thick A", "20 m", "B 22"),
    spool("Thick B", "1/7 yd", "B 022"),
    spool("Thick C", "9 m", "B 22"),
    spool("Thin A", "300 in", "F 7", "0.012 in"),
    spool("Thin B", "1001/30 ft", None, "0.012 in"),
)


def new_book(file: Path, spools: Sequence[Spool] = SPOOLS) -> Path:
    """Return a fresh book with spools."""
    with started(str(file)) as db, changing(db, NOW) as change:
        add(change, Rack(tuple(spools)))
        change.tell("spools")
    return file


@contextmanager
def change_of(file: Path) -> Iterator[Change]:
    """Make one change of a book."""
    with opened(str(file)) as db, changing(db, NOW) as change:
        yield change


def tied(file: Path, **counts: int) -> None:
    """Tie so many of each recipe."""
    with change_of(file) as change:
        done = tie(change, [order(name, count) for name, count in counts.items()], TODAY, None)
        assert not done.batch.shortages
        change.tell(f"tied {counts}")


def contents(db: sqlite3.Connection) -> dict[str, list[tuple[object, ...]]]:
    """Return all rows of the tables that are undone."""
    return {table: list(map(tuple, db.execute(f"SELECT * FROM {table}"))) for table in TABLES}


def everything(file: Path) -> list[str]:
    """Return all that is in a book, as SQL."""
    with closing(sqlite3.connect(file)) as db, db:
        return list(db.iterdump())


def check_book(file: Path) -> Mapping[str, int]:
    """Hold a book to what must be so whatever was done; return how many rows its tables have."""
    with opened(str(file)) as db:
        assert [row[0] for row in db.execute("PRAGMA integrity_check")] == ["ok"]
        assert db.execute("PRAGMA foreign_key_check").fetchall() == []
        for words in _NEVER:
            assert list(map(tuple, db.execute(words))) == [], words
        return {
            table: db.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
            for table in (*TABLES, "entry", "step")
        }


_NEVER = (
    # A spool that gave more than it had.
    "SELECT label FROM spool WHERE length_nm < (SELECT sum(nm) FROM draw WHERE spool = spool.id)",
    # A leader that lacks a piece, or has one too many: a recipe has as many as its text.
    "SELECT leader.id FROM leader JOIN recipe ON recipe.id = recipe LEFT JOIN draw "
    "ON draw.leader = leader.id AND kind = 'tied' GROUP BY leader.id HAVING count(draw.id) != "
    "(length(text) - length(replace(text, '[[section]]', ''))) / length('[[section]]')",
    # A batch without a leader, but where all were untied.
    "SELECT id FROM batch WHERE id NOT IN (SELECT batch FROM leader) "
    "AND NOT EXISTS (SELECT 1 FROM entry WHERE told LIKE '%not tied%')",
    # An entry of which nothing is told; a change of which no entry tells.
    "SELECT id FROM entry WHERE told = ''",
    "SELECT id FROM step WHERE entry NOT IN (SELECT id FROM entry)",
    # A number beyond those that were given.
    "SELECT name FROM sqlite_sequence WHERE name = 'leader' AND seq < (SELECT max(id) FROM leader)",
)
