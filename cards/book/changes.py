"""Changes of the book: what is done in one transaction in; an entry of its history out, or nothing.

While a change runs, triggers note what each row was before it. Undoing puts those rows back, last
first, in a change of its own, which can be undone like any other.
"""

import shlex
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager

from msgspec import Struct

from tagend.layouts.base.faults import refused

_TRACKED = ("spool", "recipe", "batch", "leader", "draw")


class Moment(Struct, frozen=True):
    """When a change is made, and by whom."""

    at: str  # ISO 8601, with the zone
    who: str | None = None


class HistoryEntry(Struct, frozen=True, kw_only=True):
    """One entry of the history."""

    number: int
    at: str
    who: str | None
    told: str
    undoes: int | None  # the entry that it takes back
    stands: bool  # no later entry takes it back


class Change(Struct, frozen=True):
    """A change that is being made."""

    db: sqlite3.Connection
    number: int

    def tell(self, words: str) -> None:
        """Say in the history what is done."""
        self.db.execute("UPDATE entry SET told = ? WHERE id = ?", (words, self.number))

    @property
    def any(self) -> bool:
        """Whether it has changed anything so far."""
        noted = "SELECT EXISTS (SELECT 1 FROM step WHERE entry = ?)"
        return bool(self.db.execute(noted, (self.number,)).fetchone()[0])

    @property
    def told(self) -> str:
        """What the history says of it so far."""
        row = self.db.execute("SELECT told FROM entry WHERE id = ?", (self.number,)).fetchone()
        return str(row["told"])


@contextmanager
def changing(db: sqlite3.Connection, moment: Moment) -> Iterator[Change]:
    """Make one change whole, or none of it. Other runs wait until it is done.

    One that changes nothing leaves no entry.
    Raises `Refused` where a spool would have given more than it had.
    """
    db.execute("BEGIN IMMEDIATE")
    try:
        _note_rows(db)
        made = db.execute("INSERT INTO entry (at, who) VALUES (?, ?)", (moment.at, moment.who))
        change = Change(db, int(made.lastrowid or 0))
        yield change
        check_spools(db)
        db.execute("COMMIT" if change.any else "ROLLBACK")
    except BaseException as error:
        if db.in_transaction:  # a full disk has rolled back already
            db.execute("ROLLBACK")
        elif isinstance(error, KeyboardInterrupt):
            return  # it came while the change was kept, too late to stop it
        raise


def history(db: sqlite3.Connection) -> tuple[HistoryEntry, ...]:
    """Return all entries, the first one first."""
    entries: list[HistoryEntry] = []
    undone: set[int] = set()
    for number, at, who, told, undoes in db.execute(
        "SELECT id, at, who, told, undoes FROM entry ORDER BY id DESC"
    ):
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
    put_back = {table: _putting_back(_columns(db, table)) for table in _TRACKED}
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


def _note_rows(db: sqlite3.Connection) -> None:
    """Note in `step` what every row that changes was before; NULL for one that was not there."""
    for table in _TRACKED:
        was = ", ".join(f"'{column}', old.{column}" for column in _columns(db, table))
        for event, row, noted in (
            ("INSERT", "new", "NULL"),
            ("UPDATE", "old", f"json_object({was})"),
            ("DELETE", "old", f"json_object({was})"),
        ):
            db.execute(
                f"CREATE TEMP TRIGGER IF NOT EXISTS {table}_{event} AFTER {event} ON main.{table} "
                "BEGIN INSERT INTO step (entry, of, key, was) "
                f"VALUES ((SELECT max(id) FROM entry), '{table}', {row}.id, {noted}); END"
            )


def _columns(db: sqlite3.Connection, table: str) -> list[str]:
    return [row["name"] for row in db.execute(f"PRAGMA table_info({table})")]


def check_spools(db: sqlite3.Connection) -> None:
    """Raise `Refused` where a spool would have given more than it had."""
    over = db.execute(
        "SELECT label, length_nm - (SELECT sum(nm) FROM draw WHERE spool = spool.id) AS left_nm "
        "FROM spool WHERE left_nm < 0"
    ).fetchone()
    if over is not None:
        spool = f"--spool {shlex.quote(over['label'])}"
        raise refused(
            f"{over['label']} would give {-over['left_nm'] / 10**6:.1f} mm more than is left on it",
            f"say first what was on it: `tagend book correct {spool} --left LENGTH`",
        )
