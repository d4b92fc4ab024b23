"""The book's file: its name in; an open database out, and what SQLite refuses in our words."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from tagend.cards.book.versions import APPLICATION, VERSIONS
from tagend.layouts.base.faults import Refused, refused

PATIENCE = 30.0  # seconds that a run waits for another's change

_RESTORE = "use a copy of it, made by `tagend book copy`"
# By SQLite's own names; a longer one begins with its family's.
_TOLD = {
    "SQLITE_NOTADB": ("this is no tying book", "name one that `tagend book start` made"),
    "SQLITE_CORRUPT": ("this book is damaged", _RESTORE),
    "SQLITE_BUSY": ("another run is still at work on this book", "try again"),
    "SQLITE_FULL": ("the disk is full, and nothing was recorded", "make room and try again"),
    "SQLITE_READONLY": ("this book cannot be written", "put it where you may write"),
    "SQLITE_CANTOPEN": ("this book cannot be opened", "look at its folder and its permissions"),
    "SQLITE_IOERR": ("the disk failed, and nothing was recorded", "look at it and try again"),
}


@contextmanager
def opened(name: str) -> Iterator[sqlite3.Connection]:
    """Open a book. Raises `Refused` for what is none, is damaged or is too new.

    One of an older version is copied beside itself first, and brought up to this one.
    """
    with _told(name):
        _check_kind(name)
        if not os.path.isfile(name):
            raise refused("there is no such book", "start one with `tagend book start`", name)
        with _connected(name, "rw") as db:
            if (version := _version(db, name)) == 0:
                instead = "make a book of it with `tagend book start`"
                raise refused("this file is empty", instead, name)
            if version < len(VERSIONS):
                _brought_up(db, name)
            _check_tables(db)
            try:
                yield db
            except (LookupError, TypeError, ValueError) as error:
                if isinstance(error, Refused) or _is_sound(db):
                    raise
                raise sqlite3.DatabaseError(error) from error


@contextmanager
def started(name: str) -> Iterator[sqlite3.Connection]:
    """Open a new book. Raises `Refused` where something is there already, but an empty file."""
    _check_kind(name)
    with _told(name), _connected(name, "rwc") as db:
        _version(db, name)
        db.execute("PRAGMA journal_mode = DELETE")
        _brought_up(db, name, new=True)
        yield db


def _check_kind(name: str) -> None:
    """Refuse what can hold no book, before it is opened."""
    if os.path.isdir(name):
        raise refused("this is a folder", "name a book in it", name)
    if os.path.exists(name) and not os.path.isfile(name):
        raise refused("this is no ordinary file", "name a book", name)


def copied(db: sqlite3.Connection, name: str) -> None:
    """Write all that the book holds now into a new file, whole or not at all.

    Raises `Refused` where there is a file.
    """
    path = Path(name).absolute()
    part = path.with_name(f".{os.urandom(8).hex()}.part")
    with _told(name):
        if os.path.lexists(path):
            raise refused("there is a file of this name", "name another", name)
        try:
            db.execute("VACUUM INTO ?", (part.as_uri(),))
            with part.open("rb+") as file:
                os.fsync(file.fileno())
            part.rename(path)
        finally:
            part.unlink(missing_ok=True)


# Rows are fetched whole before they are looked at: a statement that an error leaves unfinished
# would hold its lock on the file as long as anything remembers the error.


@contextmanager
def _connected(name: str, mode: str) -> Iterator[sqlite3.Connection]:
    place = f"{Path(name).resolve().as_uri()}?mode={mode}"
    connection = sqlite3.connect(place, uri=True, timeout=PATIENCE, isolation_level=None)
    with closing(connection) as db:
        db.row_factory = sqlite3.Row
        db.execute("PRAGMA foreign_keys = ON")
        db.execute("PRAGMA synchronous = EXTRA")  # what was told stays, whatever fails later
        db.execute("PRAGMA trusted_schema = OFF")  # a file may come from anybody
        yield db


def _version(db: sqlite3.Connection, name: str) -> int:
    """Return the version of a book, 0 for an empty file. Raises `Refused` for any other."""
    application, version, tables = (
        db.execute(f"PRAGMA {word}").fetchone()[0]
        for word in ("application_id", "user_version", "schema_version")
    )
    if application != APPLICATION and (application or version or tables):
        raise refused("this is another program's database", "name a tying book", name)
    if version > len(VERSIONS):
        raise refused("a newer tagend made this book", "install that one to use it", name)
    return int(version)


def _brought_up(db: sqlite3.Connection, name: str, *, new: bool = False) -> None:
    """Bring a book up to this version, unless another run has meanwhile."""
    db.execute("BEGIN IMMEDIATE")
    try:
        version = _version(db, name)
        if new and version:
            raise refused("this is a tying book already", "add to it: `tagend book add`", name)
        db.execute(f"PRAGMA application_id = {APPLICATION}")  # fails where nothing can be written
        if 0 < version < len(VERSIONS):
            with _connected(name, "ro") as reader:  # nobody writes meanwhile
                copied(reader, _old_name(name, version))
        for statement in _statements(version):
            db.execute(statement)
        db.execute(f"PRAGMA user_version = {len(VERSIONS)}")
        db.execute("COMMIT")
    except BaseException:
        if db.in_transaction:  # a full disk has rolled back already
            db.execute("ROLLBACK")
        raise


def _statements(version: int) -> list[str]:
    return [each for script in VERSIONS[version:] for each in script.split(";")]


def _check_tables(db: sqlite3.Connection) -> None:
    """Raise an error for a file whose tables are not ours, or that would act by itself.

    A person's own tables and views beside them do no harm.
    """
    made = "SELECT type, name, sql FROM sqlite_master WHERE sql IS NOT NULL"
    with closing(sqlite3.connect(":memory:")) as ours:
        for statement in _statements(0):
            ours.execute(statement)
        lacking = set(ours.execute(made))
    for found in map(tuple, db.execute(made).fetchall()):
        lacking.discard(found)
        if found[0] == "trigger":
            raise sqlite3.DatabaseError(f"it has a trigger {found[1]!r}, which tagend did not make")
    if lacking:
        raise sqlite3.DatabaseError(f"its {min(lacking)[1]} is not as tagend made it")


def _is_sound(db: sqlite3.Connection) -> bool:
    return bool(db.execute("PRAGMA integrity_check").fetchone()[0] == "ok")


def _old_name(name: str, version: int) -> str:
    """Return a name for the copy of an older book that no file has."""
    path = Path(name)
    names = (f"{path.stem}-version-{version}{end}{path.suffix}" for end in _ends())
    return str(next(path.with_name(each) for each in names if not path.with_name(each).exists()))


def _ends() -> Iterator[str]:
    yield ""
    number = 2
    while True:
        yield f"-{number}"
        number += 1


@contextmanager
def _told(name: str) -> Iterator[None]:
    try:
        yield
    except (sqlite3.Error, UnicodeDecodeError) as error:
        raise _refusal(error, name) from error


def _refusal(error: Exception, name: str) -> Refused:
    code = getattr(error, "sqlite_errorname", "")
    for family, (found, instead) in _TOLD.items():
        if code.startswith(family):
            return refused(found, instead, name)
    why = " ".join(str(error).split())[:80]
    return refused(f"this book is damaged: {why}", _RESTORE, name)
