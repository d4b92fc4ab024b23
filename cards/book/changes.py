"""Changes of the book: what is done in one transaction in; an entry of its history out, or nothing.

While a change runs, triggers note what each row was before it.
"""

import shlex
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from msgspec import Struct

from tagend.layouts.base.faults import refused

TRACKED = ("spool", "recipe", "batch", "leader", "draw")


class Moment(Struct, frozen=True):
    """When a change is made, and by whom."""

    at: str  # ISO 8601, with the zone
    who: str | None = None


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


def _note_rows(db: sqlite3.Connection) -> None:
    """Note in `step` what every row that changes was before; NULL for one that was not there."""
    for table in TRACKED:
        was = ", ".join(f"'{column}', old.{column}" for column in columns_of(db, table))
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


def columns_of(db: sqlite3.Connection, table: str) -> list[str]:
    """Return the names of a table's columns."""
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
