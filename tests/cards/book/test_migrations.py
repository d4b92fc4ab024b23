"""A book of an older version is copied beside itself, then brought up, once."""

import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from tagend.cards.book import file as book_file
from tagend.cards.book.file import opened
from tagend.cards.book.versions import VERSIONS
from tagend.layouts.base.faults import Refused
from tests.bookkeeping import TABLES, check_book, contents, new_book, tied
from tests.tree import ROOT

NEXT = (*VERSIONS, "CREATE TABLE extra (id INTEGER PRIMARY KEY); INSERT INTO extra VALUES (7)")
OLD_NAME = f"book-version-{len(VERSIONS)}.db"

BRING_UP = """
import sys
from tagend.cards.book import file
from tests.cards.book.test_migrations import NEXT
file.VERSIONS = NEXT
with file.opened(sys.argv[1]) as db:
    assert [row[0] for row in db.execute("SELECT id FROM extra")] == [7]
"""


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """Return a book of the version before the next one."""
    file = new_book(tmp_path / "book.db")
    tied(file, Short=3)
    return file


def test_an_older_book_is_copied_and_brought_up(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with opened(str(old)) as db:
        was = contents(db)
    monkeypatch.setattr(book_file, "VERSIONS", NEXT)
    for _ in range(2):
        with opened(str(old)) as db:
            assert contents(db) == was
            assert db.execute("PRAGMA user_version").fetchone()[0] == len(NEXT)
    assert sorted(path.name for path in old.parent.iterdir()) == [OLD_NAME, "book.db"]
    tied(old, Short=1)
    monkeypatch.undo()
    with opened(str(old.with_name(OLD_NAME))) as db:
        assert contents(db) == was
    with pytest.raises(Refused, match="newer"), opened(str(old)):
        pass


def test_a_copy_of_before_is_kept(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept = old.with_name(OLD_NAME)
    kept.write_text("something else")
    monkeypatch.setattr(book_file, "VERSIONS", NEXT)
    with opened(str(old)):
        pass
    assert kept.read_text() == "something else"
    assert len(list(old.parent.iterdir())) == 3


def test_a_step_that_fails_leaves_the_old_book(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = old.read_bytes()
    monkeypatch.setattr(book_file, "VERSIONS", (*NEXT[:-1], NEXT[-1] + "; INSERT INTO none"))
    with pytest.raises(Refused), opened(str(old)):
        pass
    assert old.read_bytes() == before
    monkeypatch.undo()
    check_book(old)


def test_two_runs_at_once_bring_it_up_once(old: Path) -> None:
    command = [sys.executable, "-c", BRING_UP, str(old)]
    runs = [subprocess.Popen(command, cwd=ROOT, stderr=subprocess.PIPE) for _ in range(6)]
    assert [(run.communicate()[1], run.returncode) for run in runs] == [(b"", 0)] * 6
    assert sorted(path.name for path in old.parent.iterdir()) == [OLD_NAME, "book.db"]
    check_book(old.with_name(OLD_NAME))


def test_a_book_is_no_older_than_its_tables(old: Path) -> None:
    """A version is what its scripts make: none was changed after it was released."""
    with closing(sqlite3.connect(old)) as db, db:
        found = {row[0] for row in db.execute("SELECT name FROM sqlite_master WHERE type='table'")}
    assert found - {"sqlite_sequence"} == {*TABLES, "entry", "step"}
