"""The leaders of the book: what is asked for in; the leaders, and what each is tied of, out."""

import sqlite3
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from functools import cache
from itertools import groupby
from typing import Literal, NamedTuple, get_args

from msgspec import Struct

from tagend.cards.book.changes import Change
from tagend.cards.book.naming import meant, ranges
from tagend.cards.book.spools import LISTED, BookSpool, called, listed
from tagend.cards.book.stored import day, read_day
from tagend.layouts.base.faults import refused

State = Literal["tied", "fished", "given", "discarded"]
STATES: tuple[State, ...] = get_args(State)
IN_WALLET: tuple[State, ...] = ("tied", "fished")


class Of(Struct, frozen=True):
    """What one section of a leader was cut from."""

    section: int
    spool: str
    lot: str | None


class BookLeader(Struct, frozen=True, kw_only=True):
    """One leader that was tied."""

    number: int
    batch: int
    recipe: str  # its name
    tied: date
    state: State
    state_day: date | None
    remark: str | None
    drawn: tuple[Of, ...]  # by section, from the butt; none for what is bought ready made

    @property
    def lots(self) -> tuple[str, ...]:
        """The lots that it holds, from the butt."""
        return tuple(dict.fromkeys(of.lot for of in self.drawn if of.lot))


class Sought(Struct, frozen=True, kw_only=True):
    """What a recall asks for; None leaves all."""

    lot: str | None = None
    spool: str | None = None
    recipe: str | None = None
    batch: int | None = None
    tied: date | None = None  # on this day
    since: date | None = None  # tied on this day or later
    before: date | None = None  # tied earlier than this day
    state: State | None = None
    numbers: Sequence[int] | None = None


class Found(Struct, frozen=True):
    """What a recall finds."""

    leaders: tuple[BookLeader, ...]  # by number
    of: int  # leaders that are in the book
    spools: tuple[BookSpool, ...]  # that were looked for; none where none were


def recall(db: sqlite3.Connection, sought: Sought) -> Found:
    """Return the leaders that are all of what is sought, by their number.

    Raises `Refused` for a lot, spool, recipe, batch or number that the book has not.
    """
    of = int(db.execute("SELECT count(*) AS n FROM leader").fetchone()["n"])
    chosen: tuple[BookSpool, ...] = ()
    conditions, values = ["1"], list[str | int]()
    if sought.lot is not None or sought.spool is not None:
        chosen = called(db, label=sought.spool, lot=sought.lot)
        conditions.append(
            f"leader.id IN (SELECT leader FROM draw WHERE kind = 'tied' AND spool IN {LISTED})"
        )
        values.append(listed(spool.id for spool in chosen))
    if sought.recipe is not None:
        names = [row["name"] for row in db.execute("SELECT name FROM recipe")]
        conditions.append("recipe.name = ?")
        values.append(meant("recipe", sought.recipe, names))
    if sought.batch is not None:
        known = [str(row["id"]) for row in db.execute("SELECT id FROM batch")]
        conditions.append("batch = ?")
        values.append(int(meant("batch", str(sought.batch), known)))
    for condition, value in (
        ("tied = ?", sought.tied),
        ("tied >= ?", sought.since),
        ("tied < ?", sought.before),
        ("state = ?", sought.state),
    ):
        if value is not None:
            conditions.append(condition)
            values.append(str(value))  # of a day, as ISO 8601 has it
    if sought.numbers is not None:
        _known(db, sought.numbers)
        conditions.append(f"leader.id IN {LISTED}")
        values.append(listed(sought.numbers))
    rows = db.execute(
        "SELECT leader.*, recipe.name FROM leader JOIN recipe ON recipe.id = leader.recipe "
        f"WHERE {' AND '.join(conditions)} ORDER BY leader.id",
        values,
    ).fetchall()
    return Found(tuple(_leaders(db, rows)), of, chosen)


def leaders(db: sqlite3.Connection, numbers: Sequence[int]) -> tuple[BookLeader, ...]:
    """Return leaders by their numbers; raises `Refused` for one that is not in the book."""
    return recall(db, Sought(numbers=numbers)).leaders


def mark(
    change: Change, numbers: Sequence[int], state: State, on: date, remark: str | None
) -> None:
    """Say what became of leaders. A remark that is there stays where none is given."""
    _known(change.db, numbers)
    change.db.executemany(
        "UPDATE leader SET state = ?, state_day = ?, remark = coalesce(?, remark) WHERE id = ?",
        ((state, on.isoformat(), remark, number) for number in numbers),
    )
    change.tell(f"marked no. {ranges(numbers)} {state}" + (f": {remark}" if remark else ""))


class Left(NamedTuple):
    """What there is of one recipe."""

    recipe: str
    states: Counter[State]
    oldest: date | None  # that is in a wallet


def left(db: sqlite3.Connection) -> Iterator[Left]:
    """Yield each recipe, its leaders by state, and the day of the oldest that is in a wallet."""
    rows = db.execute(
        "SELECT name, state, count(*), min(tied) FROM leader JOIN recipe ON recipe.id = recipe "
        "GROUP BY name, state ORDER BY min(min(leader.id)) OVER (PARTITION BY name)"
    ).fetchall()
    for recipe, of_recipe in groupby(rows, key=lambda row: str(row["name"])):
        states, days = Counter[State](), list[str]()
        for _, state, count, oldest in of_recipe:
            states[state] = count
            days += [oldest] if state in IN_WALLET else []
        yield Left(recipe, states, day(min(days, default=None)))


def _known(db: sqlite3.Connection, numbers: Sequence[int]) -> None:
    known = {row["id"] for row in db.execute("SELECT id FROM leader")}
    if missing := [number for number in numbers if number not in known]:
        given = db.execute("SELECT seq FROM sqlite_sequence WHERE name = 'leader'").fetchone()
        undone = [number for number in missing if given and number <= given["seq"]]
        if undone:
            raise refused(f"no. {ranges(undone)} was given, and undone", _there_are(known))
        raise refused(f"the book has no leader {ranges(missing)}", _there_are(known))


def _there_are(known: Iterable[int]) -> str:
    return f"it has no. {ranges(known)}" if known else "tie some first"


def _leaders(db: sqlite3.Connection, rows: Sequence[sqlite3.Row]) -> Iterator[BookLeader]:
    drawn: dict[int, list[Of]] = {row["id"]: [] for row in rows}
    of = cache(Of)  # many leaders hold the same
    pieces = db.execute(
        "SELECT leader, section, label, lot FROM draw JOIN spool ON spool.id = spool "
        f"WHERE kind = 'tied' AND leader IN {LISTED} ORDER BY leader, section",
        (listed(drawn),),
    ).fetchall()
    for leader, section, label, lot in pieces:
        drawn[leader].append(of(section, str(label), lot and str(lot)))
    for row in rows:
        yield BookLeader(
            number=row["id"],
            batch=row["batch"],
            recipe=str(row["name"]),
            tied=read_day(row["tied"]),
            state=row["state"],
            state_day=day(row["state_day"]),
            remark=row["remark"] and str(row["remark"]),
            drawn=tuple(drawn[row["id"]]),
        )
