"""Corrections: what was really used, tied or on a spool in; the book put right, and told, out."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Literal, get_args

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.units import Length
from tagend.cards.book.changes import Change, check_spools
from tagend.cards.book.leaders import leaders
from tagend.cards.book.naming import ranges
from tagend.cards.book.spools import BookSpool, called, open_spool
from tagend.cards.book.stored import nanometres
from tagend.layouts.base.faults import refused

SpoolState = Literal["opened", "empty", "bad", "good"]
SPOOL_STATES: tuple[SpoolState, ...] = get_args(SpoolState)


class Used(Struct, frozen=True, kw_only=True):
    """What was really used for a section of leaders."""

    section: int
    spool: str | None = None  # another than the book has
    spoiled: bool = False  # the first piece was, and a second was cut


def spool_called(change: Change, asked: str) -> BookSpool:
    """Return the spool that is meant. Raises `Refused`."""
    (found,) = called(change.db, label=asked, lot=None)
    return found


def correct_use(change: Change, numbers: Sequence[int], used: Used) -> None:
    """Say what a section of leaders was really cut from, or that it was cut twice.

    Raises `Refused` for a leader that has no piece of a spool there.
    """
    cut_of = leaders(change.db, numbers)
    cut = {(of.number, piece.section) for of in cut_of for piece in of.drawn}
    for number in numbers:
        if (number, used.section) not in cut:
            found = f"section {used.section} of no. {number} was cut from no spool"
            raise refused(found, "name a section that was")
    spool = None if used.spool is None else spool_called(change, used.spool)
    at = [(number, used.section) for number in numbers]
    if used.spoiled:
        _cut_again(change, at)
    if spool is not None:
        change.db.executemany(
            "UPDATE draw SET spool = ? WHERE kind = 'tied' AND leader = ? AND section = ?",
            ((spool.id, *each) for each in at),
        )
        open_spool(change.db, spool, min(of.tied for of in cut_of))
    check_spools(change.db)
    words = ("a piece spoiled" if used.spoiled else "", f"of {spool.told}" if spool else "")
    change.tell(f"no. {ranges(numbers)}, section {used.section}: {' '.join(filter(None, words))}")


def _cut_again(change: Change, at: Sequence[tuple[int, int]]) -> None:
    """Record sections as cut a second time, of the same spool."""
    where = "kind = 'tied' AND leader = ? AND section = ?"
    for each in at:
        row = change.db.execute(f"SELECT spool, nm FROM draw WHERE {where}", each).fetchone()
        change.db.execute(f"UPDATE draw SET kind = 'spoiled' WHERE {where}", each)
        change.db.execute(
            "INSERT INTO draw (spool, nm, kind, leader, section) VALUES (?, ?, 'tied', ?, ?)",
            (*row, *each),
        )


def untie(change: Change, numbers: Sequence[int]) -> None:
    """Say that leaders were never tied: their line is on its spools again, their numbers gone."""
    leaders(change.db, numbers)
    for words in ("DELETE FROM draw WHERE leader = ?", "DELETE FROM leader WHERE id = ?"):
        change.db.executemany(words, ((number,) for number in numbers))
    change.tell(f"no. {ranges(numbers)} not tied")


def correct_day(change: Change, numbers: Sequence[int], tied: date) -> None:
    """Say when leaders were really tied."""
    leaders(change.db, numbers)
    change.db.executemany(
        "UPDATE leader SET tied = ? WHERE id = ?",
        ((tied.isoformat(), number) for number in numbers),
    )
    change.tell(f"no. {ranges(numbers)} tied {tied.isoformat()}")


def correct_spool(
    change: Change, spool: BookSpool, left: Length | None, says: Mapping[str, str]
) -> None:
    """Put a spool right: what is left on it, and what else the book says of it, by column."""
    told = [f"{column} {value}" for column, value in says.items()]
    if left is not None:
        measure(change, spool, left.mm)
        told.append(f"{left.plain} left")
    for column, value in says.items():
        change.db.execute(f"UPDATE spool SET {column} = ? WHERE id = ?", (value, spool.id))
    change.tell(f"{spool.label}: {', '.join(told)}")


def measure(change: Change, spool: BookSpool, left_mm: Fraction) -> None:
    """Record what was found to be left on a spool, as a draw of what the book had too much."""
    change.db.execute(
        "INSERT INTO draw (spool, nm, kind) VALUES (?, ?, 'measured')",
        (spool.id, nanometres(spool.left_mm) - nanometres(left_mm)),
    )


def mark_spool(
    change: Change, spool: BookSpool, state: SpoolState, on: date, remark: str | None
) -> None:
    """Say that a spool is opened, empty or bad, or good again after all.

    Of a bad or an empty one no batch is cut.
    """
    if state == "empty" and spool.left_mm:
        measure(change, spool, Fraction(0))
    says = {"bad": None, "empty": None} if state == "good" else {state: on.isoformat()}
    for column, value in says.items():
        change.db.execute(f"UPDATE spool SET {column} = ? WHERE id = ?", (value, spool.id))
    if remark is not None:
        change.db.execute("UPDATE spool SET remark = ? WHERE id = ?", (remark, spool.id))
    change.tell(f"marked {spool.told} {state}" + (f": {remark}" if remark else ""))
