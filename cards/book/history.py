"""The history of the book: its entries, the last of which can be undone, in a change of its own.

Undoing puts back the rows that the change has noted, last first; it can be undone like any other.
"""

import sqlite3
from collections.abc import Iterable, Sequence

from msgspec import Struct

from tagend.cards.book.changes import TRACKED, Change, columns_of
from tagend.layouts.base.faults import refused


class HistoryEntry(Struct, frozen=True, kw_only=True):
    """One entry of the history."""

    number: int
    at: str
    who: str | None
    told: str
    undoes: int | None  # the entry that it takes back
    stands: bool  # no later entry takes it back


def history(db: sqlite3.Connection) -> tuple[HistoryEntry, ...]:
    """Return all entries, the first one first."""
    entries: list[HistoryEntry] = []
    undone: set[int] = set()
    rows = db.execute("SELECT id, at, who, told, undoes FROM entry ORDER BY id DESC").fetchall()
    for number, at, who, told, undoes in rows:
        stands = number not in undone
        if stands and undoes:
            undone.add(undoes)
        entries.append(
            HistoryEntry(
                number=number,
                at=str(at),
                who=who and str(who),
                told=str(told),
                undoes=undoes,
                stands=stands,
            )
        )
    return tuple(reversed(entries))


def undo(change: Change, asked: int | None = None) -> HistoryEntry:
    """Take back the last change that stands, and return its entry.

    `asked` must be that one; or the very last entry, which may be an undoing that is regretted.
    Raises `Refused` for any other, since changes build on each other.
    """
    *before, _ = history(change.db)
    last = _last_standing(before)
    if last is None and asked is None:
        raise refused("there is nothing to undo", "`tagend book history` lists what was done")
    may = {entry.number: entry for entry in undoable(before)}
    chosen = last if asked is None else may.get(asked)
    if chosen is None:
        first = f"undo {last.number} first" if last else "nothing is left to undo"
        raise refused(f"entry {asked} is not the last change", first)
    _put_back(change.db, chosen.number)
    change.db.execute("UPDATE entry SET undoes = ? WHERE id = ?", (chosen.number, change.number))
    change.tell(f"undid {chosen.number}: {chosen.told}")
    return chosen


def undoable(entries: Sequence[HistoryEntry]) -> tuple[HistoryEntry, ...]:
    """Return the entries that may be taken back, of all: the last that stands, and the very last.

    Those are one, but where the very last is an undoing, which can be regretted.
    """
    last = _last_standing(entries)
    return tuple(dict.fromkeys(entry for entry in (last, *entries[-1:]) if entry is not None))


def _last_standing(entries: Sequence[HistoryEntry]) -> HistoryEntry | None:
    return next((entry for entry in reversed(entries) if entry.stands and not entry.undoes), None)


def last_who(db: sqlite3.Connection) -> str:
    """Return who was at the bench last, as far as anybody said."""
    row = db.execute("SELECT who FROM entry WHERE who > '' ORDER BY id DESC LIMIT 1").fetchone()
    return str(row[0]) if row else ""


def last_entry(db: sqlite3.Connection) -> int:
    """Return the number of the last entry; 0 where there is none."""
    return int(db.execute("SELECT coalesce(max(id), 0) FROM entry").fetchone()[0])


def check_unchanged(db: sqlite3.Connection, table: str, rows: Iterable[int], since: int) -> None:
    """Raise `Refused` where a row was changed after an entry, with what that change tells.

    A spool is changed by what is drawn of it too.
    """
    listed = f"[{','.join(map(str, rows))}]"
    found = db.execute(
        "SELECT told FROM step JOIN entry ON entry.id = entry WHERE entry > :since AND ("
        "of = :table AND key IN (SELECT value FROM json_each(:rows)) OR :table = 'spool' AND "
        "of = 'draw' AND (json_extract(was, '$.spool') IN (SELECT value FROM json_each(:rows)) OR "
        "EXISTS (SELECT 1 FROM draw WHERE draw.id = key "
        "AND spool IN (SELECT value FROM json_each(:rows))))) ORDER BY entry DESC",
        {"since": since, "table": table, "rows": listed},
    ).fetchone()
    if found is not None:
        raise refused(f"the book was changed meanwhile: {found['told']}", "look at it again")


def _put_back(db: sqlite3.Connection, entry: int) -> None:
    steps = db.execute(
        "SELECT id, of, key, was IS NULL AS new FROM step WHERE entry = ? ORDER BY id DESC",
        (entry,),
    ).fetchall()
    put_back = {table: _putting_back(columns_of(db, table)) for table in TRACKED}
    for step, table, key, new in steps:
        if table not in put_back:  # none but our own tables, whatever a file says
            raise sqlite3.DatabaseError("unknown table in its history")
        if new:
            db.execute(f"DELETE FROM {table} WHERE id = ?", (key,))
        else:
            db.execute(f"INSERT INTO {table} {put_back[table]}", (step,))


def _putting_back(columns: Sequence[str]) -> str:
    noted = ", ".join(f"json_extract(was, '$.{column}')" for column in columns)
    again = ", ".join(f"{column} = excluded.{column}" for column in columns)
    return (
        f"({', '.join(columns)}) SELECT {noted} FROM step WHERE step.id = ? "
        f"ON CONFLICT (id) DO UPDATE SET {again}"
    )
