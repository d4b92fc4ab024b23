"""Whatever lies where a book should be: one line that a person can act on, and status 2."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from tagend.cards.book.correcting import Used, correct_use
from tagend.cards.book.history import undo
from tagend.cards.book.leaders import mark
from tests.bookkeeping import TODAY, change_of, everything, new_book, tied
from tests.cards.cli.conftest import Tagend

COMMANDS = (
    ("show",),
    ("show", "--json"),
    ("history",),
    ("history", "--json"),
    ("recall", "--lot", "B 22"),
    ("recall", "--older-than", "0", "--json"),
    ("mark", "1-2", "given"),
    ("mark", "--spool", "Thin A", "empty"),
    ("correct", "1", "--section", "1", "--spoiled"),
    ("correct", "2", "--not-tied"),
    ("undo",),
    ("undo",),
    ("tie", "--again", "3", "--anyway"),
    ("plan", "--again", "3", "--anyway"),
)


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """Return the bytes of a book in which all sorts of things were done."""
    file = new_book(tmp_path_factory.mktemp("season") / "book.db")
    tied(file, Short=4, Double=3)
    with change_of(file) as change:
        mark(change, (1, 2), "given", TODAY, "to the boat")
        change.tell("marked")
    with change_of(file) as change:
        correct_use(change, (3,), Used(section=1, spool="Thick C", spoiled=True))
    with change_of(file) as change:
        undo(change)
    tied(file, Long=3)
    return file.read_bytes()


def done_or_told(tagend: Tagend, file: Path, *arguments: str) -> int:
    """Run a command; whatever the book holds, it says something sensible or is refused."""
    run = tagend("book", arguments[0], "--book", file, *arguments[1:])
    assert run.status in (0, 2), run
    assert not run.status or run.err.strip()
    return run.status


def refused(tagend: Tagend, file: Path, words: str) -> None:
    """Run every command, and see each refused in such words with nothing changed."""
    before = file.read_bytes() if file.is_file() else None
    for arguments in COMMANDS:
        run = tagend("book", arguments[0], "--book", file, *arguments[1:])
        (fault,) = run.faults
        assert run.status == 2
        assert words in fault
        assert str(file) in fault
    assert before == (file.read_bytes() if file.is_file() else None)


def test_the_commands_do_what_they_should_with_a_sound_book(
    tagend: Tagend, tmp_path: Path, season: bytes
) -> None:
    file = tmp_path / "book.db"
    file.write_bytes(season)
    assert not any(done_or_told(tagend, file, *each) for each in COMMANDS)


def empty(file: Path) -> None:
    file.write_bytes(b"")


def text(file: Path) -> None:
    file.write_text("[[spool]]\n" * 100)


def foreign(file: Path) -> None:
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("CREATE TABLE spool (id, label)")


def newer(file: Path) -> None:
    new_book(file)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("PRAGMA user_version = 999")


def folder(file: Path) -> None:
    file.mkdir()


def missing(file: Path) -> None:
    file.unlink(missing_ok=True)


def planted_trigger(file: Path) -> None:
    new_book(file)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("CREATE TRIGGER t AFTER INSERT ON leader BEGIN DELETE FROM spool; END")


def other_tables(file: Path) -> None:
    new_book(file)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("ALTER TABLE spool ADD COLUMN 'x) VALUES (1); --' TEXT")


def view_for_a_table(file: Path) -> None:
    new_book(file)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("DROP TABLE step")
        db.execute("CREATE VIEW step AS SELECT id, 1 AS entry, 'x' AS of, 1 AS key, 1 FROM spool")


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (empty, "empty"),
        (text, "no tying book"),
        (foreign, "another program"),
        (newer, "newer"),
        (folder, "folder"),
        (missing, "no such book"),
        (planted_trigger, "damaged"),
        (other_tables, "damaged"),
        (view_for_a_table, "damaged"),
    ],
)
def test_what_is_no_book_is_told(
    tagend: Tagend, tmp_path: Path, make: Callable[[Path], None], words: str
) -> None:
    file = tmp_path / "book.db"
    make(file)
    refused(tagend, file, words)


@pytest.mark.parametrize("make", [text, foreign, newer, folder, planted_trigger])
def test_nothing_is_started_over_what_is_there(
    tagend: Tagend, tmp_path: Path, make: Callable[[Path], None]
) -> None:
    file = tmp_path / "book.db"
    make(file)
    before = file.read_bytes() if file.is_file() else b""
    run = tagend("book", "start", "--book", file)
    assert run.status == 2
    assert len(run.faults) == 1
    assert before == (file.read_bytes() if file.is_file() else b"")


def test_a_persons_own_view_in_the_book_does_no_harm(tagend: Tagend, tmp_path: Path) -> None:
    file = new_book(tmp_path / "book.db")
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("CREATE VIEW low AS SELECT label FROM spool WHERE length_nm < 1000000")
    assert tagend("book", "show", "--book", file).status == 0


@pytest.mark.parametrize(
    "step",
    [
        ("sqlite_master", 1, None),
        ("entry", 1, None),
        ("spool; DROP TABLE draw", 1, None),
        ("leader", 1, "no json"),
        ("leader", 1, "[" * 100_000),
        ("leader", 1, "[1]"),
        ("leader", 1, '{"id": {"a": 1}}'),
        ("leader", 1, '{"id": "1", "batch": 1e999}'),
        ("leader", "x", '{"id": 1, "batch": 77, "recipe": 1, "tied": "x", "state": "tied"}'),
    ],
)
def test_a_history_that_is_made_up_undoes_nothing(
    tagend: Tagend, tmp_path: Path, season: bytes, step: tuple[object, ...]
) -> None:
    file = tmp_path / "book.db"
    file.write_bytes(season)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("DROP TABLE IF EXISTS x")
        db.execute("INSERT INTO step (entry, of, key, was) VALUES (6, ?, ?, ?)", step)
    before = everything(file)
    assert done_or_told(tagend, file, "undo") == 2
    assert everything(file) == before


def test_signs_that_would_steer_a_terminal_are_not_passed_on(
    tagend: Tagend, tmp_path: Path
) -> None:
    file = new_book(tmp_path / "book.db")
    with closing(sqlite3.connect(file)) as db, db:
        db.execute("UPDATE entry SET told = 'a' || char(27) || '[2J' || char(10) || 'b'")
        db.execute("UPDATE spool SET remark = 'a' || char(155) || 'b'")
    for command in ("history", "show"):
        said = tagend("book", command, "--book", file).out
        assert said
        assert all(line.isprintable() for line in said.splitlines())
    assert len(tagend("book", "history", "--book", file).out.splitlines()) == 1


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE leader SET tied = '2026-13-01'",
        "UPDATE spool SET diameter = 'wide'",
        "UPDATE spool SET opened = 'x'",
        "UPDATE recipe SET text = 'name =' || id",
        "UPDATE spool SET length = ''",
    ],
)
def test_a_value_that_no_run_wrote_is_told(
    tagend: Tagend, tmp_path: Path, season: bytes, change: str
) -> None:
    file = tmp_path / "book.db"
    file.write_bytes(season)
    with closing(sqlite3.connect(file)) as db, db:
        db.execute(change)
    assert 2 in [done_or_told(tagend, file, *each) for each in COMMANDS]


@pytest.mark.parametrize("seed", range(12))
def test_a_book_that_ends_too_soon_is_told(
    tagend: Tagend, tmp_path: Path, season: bytes, seed: int
) -> None:
    file = tmp_path / "book.db"
    random = Random(seed)
    for length in (random.randrange(1, 100), random.randrange(100, len(season))):
        for arguments in COMMANDS:
            file.write_bytes(season[:length])
            done_or_told(tagend, file, *arguments)


@pytest.mark.parametrize("seed", range(30))
def test_a_book_with_wrong_bytes_ends_in_no_traceback(
    tagend: Tagend, tmp_path: Path, season: bytes, seed: int
) -> None:
    file = tmp_path / "book.db"
    random = Random(seed)
    data = bytearray(season)
    used = [place for place, byte in enumerate(season) if byte]  # most of a page is empty
    for _ in range(random.choice((1, 1, 5, 50))):
        data[random.choice(used)] ^= random.choice((1, 2, 128, random.randrange(1, 256)))
    for arguments in COMMANDS:
        file.write_bytes(data)
        done_or_told(tagend, file, *arguments)
