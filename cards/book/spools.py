"""The spools of the book: rack files in; what each holds, gave and has left out."""

import sqlite3
from collections.abc import Iterable, Sequence
from datetime import date
from functools import cache

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.plural import counted
from tagend.cards.base.units import (
    Diameter,
    Length,
    Strength,
    parse_diameter,
    parse_strength,
)
from tagend.cards.book.changes import Change
from tagend.cards.book.naming import meant
from tagend.cards.book.stored import day, millimetres, nanometres
from tagend.cards.practice.rack_file import Rack, Spool, read_left
from tagend.layouts.base.faults import Fault, refuse_any, under
from tagend.layouts.base.quantities import LENGTH_MM

# Most spools are like others in some of these, and reading one takes 0.1 ms.
_diameter = cache(parse_diameter)
_strength = cache(parse_strength)
_length = cache(read_left)

# Decimals that what is left is rounded down to: a hundredth of a yard is 9 mm.
_DECIMALS = {"yd": 2, "m": 2, "ft": 2, "in": 1, "cm": 0, "mm": 0}


class BookSpool(Struct, frozen=True, kw_only=True):
    """One spool as the book knows it."""

    id: int
    label: str
    material: str
    diameter: Diameter
    strength: Strength | None
    lot: str | None
    bought: date | None
    length: Length  # what was on it when it came into the book
    left_mm: Fraction
    opened: date | None
    empty: date | None
    bad: date | None
    remark: str | None

    @property
    def left(self) -> Length:
        """What is left in the unit that the spool was written in, and its words rounded down."""
        return Length(self.left_mm, *[left_words(self.left_mm, self.length.unit)] * 2)

    @property
    def on_rack(self) -> Spool:
        """The spool as a batch is cut from it."""
        return Spool(
            label=self.label,
            material=self.material,
            diameter=self.diameter,
            left=self.left,
            strength=self.strength,
            lot=self.lot,
        )

    @property
    def told(self) -> str:
        """What it is called, with its lot: `Clear 8, lot F 7`."""
        return f"{self.label}, lot {self.lot}" if self.lot else self.label


def left_words(mm: Fraction, unit: str) -> str:
    """Return what is left, rounded down: `12.25 yd`."""
    parts = 10 ** _DECIMALS[unit]
    number = Fraction(mm * parts // LENGTH_MM[unit], parts)
    decimals = f"{float(number):.{_DECIMALS[unit]}f}"
    return f"{decimals.rstrip('0').rstrip('.') if '.' in decimals else decimals} {unit}"


def spools(db: sqlite3.Connection, only: Iterable[int] | None = None) -> tuple[BookSpool, ...]:
    """Return all spools, or those with these ids, in the order in which they came into the book."""
    chosen, values = ("", []) if only is None else (f"WHERE id IN {LISTED}", [listed(only)])
    rows = db.execute(
        "SELECT spool.*, length_nm - coalesce("
        "  (SELECT sum(nm) FROM draw WHERE spool = spool.id), 0) AS left_nm "
        f"FROM spool {chosen} ORDER BY id",
        values,
    ).fetchall()
    with under("a spool of the book"):
        return tuple(map(_spool, rows))


def called(db: sqlite3.Connection, *, label: str | None, lot: str | None) -> tuple[BookSpool, ...]:
    """Return the spools of a label, of a lot or of both, as a person writes them.

    Raises `Refused` for a label or a lot that the book has not.
    """
    found = db.execute("SELECT id, label, lot FROM spool ORDER BY id").fetchall()
    labels = [str(row["label"]) for row in found]
    if lot is not None:
        lot = meant("lot", lot, [str(row["lot"]) for row in found if row["lot"]])
        found = [row for row in found if row["lot"] == lot]
    if label is not None:
        label = meant("spool", label, labels)
        found = [row for row in found if row["label"] == label]
    return spools(db, [row["id"] for row in found])


LISTED = "(SELECT value FROM json_each(?))"  # in SQL, what `listed` gives


def listed(numbers: Iterable[int]) -> str:
    """Return numbers as one value for SQL, however many they are."""
    return f"[{','.join(map(str, numbers))}]"


def usable(all_of_them: Iterable[BookSpool]) -> Rack:
    """Return the spools that a batch may be cut from: none that is bad or empty."""
    return Rack(
        tuple(spool.on_rack for spool in all_of_them if spool.bad is None and spool.empty is None)
    )


def add(change: Change, rack: Rack) -> None:
    """Take spools into the book; those that it has already stay as they are.

    Raises `Refused` where a spool has the label of another line, or of another lot.
    """
    known: dict[str, BookSpool | Spool] = {one.label.casefold(): one for one in spools(change.db)}
    new: list[Spool] = []
    faults: list[Fault] = []
    for spool in rack.spools:
        at = known.setdefault(spool.label.casefold(), spool)
        if at is spool:
            new.append(spool)
        elif isinstance(at, Spool) or not _is_same(at, spool):
            found = f"the book has another spool of this label: {_line(at)}"
            faults.append(Fault(spool.label, found, _rename(spool)))
    refuse_any(faults)
    change.db.executemany(
        "INSERT INTO spool (label, material, diameter, strength, lot, bought, length, length_nm) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        map(_row, new),
    )
    known_already = len(rack.spools) - len(new)
    there = f", {known_already} were there already" if known_already else ""
    change.tell(f"{counted(len(new), 'spool')} added{there}")


def open_spool(db: sqlite3.Connection, spool: BookSpool, on: date) -> None:
    """Note that line was cut of a spool on a day, unless it was open by then."""
    if spool.opened is None or on < spool.opened:
        db.execute("UPDATE spool SET opened = ? WHERE id = ?", (on.isoformat(), spool.id))


def _row(spool: Spool) -> Sequence[str | int | None]:
    return (
        spool.label,
        spool.material,
        spool.diameter.plain,
        None if spool.strength is None else spool.strength.plain,
        spool.lot,
        None if spool.bought is None else spool.bought.isoformat(),
        spool.left.plain,
        nanometres(spool.left.mm),
    )


def _spool(row: sqlite3.Row) -> BookSpool:
    return BookSpool(
        id=row["id"],
        label=str(row["label"]),
        material=str(row["material"]),
        diameter=_diameter(row["diameter"]),
        strength=row["strength"] and _strength(row["strength"]),
        lot=row["lot"] and str(row["lot"]),
        bought=day(row["bought"]),
        length=_length(row["length"]),
        left_mm=millimetres(row["left_nm"]),
        opened=day(row["opened"]),
        empty=day(row["empty"]),
        bad=day(row["bad"]),
        remark=row["remark"] and str(row["remark"]),
    )


def _is_same(at: BookSpool, spool: Spool) -> bool:
    return (at.material, at.diameter.mm, at.lot) == (spool.material, spool.diameter.mm, spool.lot)


def _line(spool: BookSpool | Spool) -> str:
    lot = f", lot {spool.lot}" if spool.lot else ""
    return f"{spool.diameter.plain} {spool.material}{lot}"


def _rename(spool: Spool) -> str:
    return f'give it one of its own, such as "{spool.label} (2)"'
