"""What fails around a run, such as a disk or a pipe, leaves the book as it was, and is told."""

import os
import resource
import signal
import sqlite3
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from tagend import cards
from tagend.cards.book.changes import changing
from tagend.cards.book.file import opened, started
from tagend.cards.book.history import history
from tests.bookkeeping import NOW, change_of, check_book, everything, new_book, spool, tied
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT

TAGEND = [sys.executable, "-c", "from tagend.cards.cli import main; main()", "book"]
UNHEARD = 3


@pytest.fixture
def shared() -> Iterator[Path]:
    """Make a folder that everyone may reach; pytest's own are closed to other users."""
    with TemporaryDirectory() as folder:
        os.chmod(folder, 0o777)
        yield Path(folder)
        os.chmod(folder, 0o777)


def a_book(folder: Path) -> Path:
    file = new_book(folder / "book.db")
    tied(file, Short=3)
    return file


def run(
    *arguments: str | Path, stdout: int = subprocess.PIPE, before: Callable[[], object] = int
) -> subprocess.CompletedProcess[str]:
    """Run a command, with something done in its process first."""
    return subprocess.run(
        [*TAGEND, *map(str, arguments)],
        cwd=ROOT,
        stdout=stdout,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=before,
        check=False,
    )


def one_line(run: subprocess.CompletedProcess[str], status: int = 2) -> str:
    assert run.returncode == status, run.stderr
    (line,) = run.stderr.splitlines()
    return line


def as_nobody(*arguments: str | Path, before: str = "") -> subprocess.CompletedProcess[str]:
    """Run a command on a book as another user where this one is root, who may do anything.

    Nobody may read every module either, so they are loaded by a run on a copy.
    """
    *words, book = map(str, arguments)
    return subprocess.run(
        [sys.executable, "-c", f"{before}\n{_AS_NOBODY}", book, "book", *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


_AS_NOBODY = """
import os, shutil, sys, tempfile
from contextlib import redirect_stderr, redirect_stdout, suppress
from io import StringIO
from tagend.cards.cli import main
_, book, *words = sys.argv
with tempfile.TemporaryDirectory() as folder, redirect_stdout(StringIO()):
    with redirect_stderr(StringIO()), suppress(SystemExit):
        main([*words, shutil.copy(book, folder)])
if os.geteuid() == 0:
    os.setegid(65534)
    os.seteuid(65534)
main([*words, book])
"""


CHANGES = (
    ("tie", "--again", "1,2,3", "--anyway"),
    ("mark", "1-3", "given", "--remark", "x" * 50),
    ("correct", "--spool", "Thin A", "--left", "3 m"),
    ("undo",),
)


@pytest.mark.parametrize("change", CHANGES)
def test_nothing_is_recorded_that_could_not_be_said(tmp_path: Path, change: tuple[str]) -> None:
    if not os.path.exists("/dev/full"):
        pytest.skip("no such device")
    file = a_book(tmp_path)
    before = everything(file)
    full = os.open("/dev/full", os.O_WRONLY)
    done = run(*change, "--book", file, stdout=full)
    os.close(full)
    assert done.returncode == UNHEARD
    assert "nothing was recorded" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr
    assert "ignored" not in done.stderr
    assert everything(file) == before


@pytest.mark.parametrize("change", [*CHANGES, ("show",), ("history",)])
def test_a_reader_that_has_gone_is_no_traceback(tmp_path: Path, change: tuple[str]) -> None:
    file = a_book(tmp_path)
    before = everything(file)
    reads, writes = os.pipe()
    os.close(reads)
    done = run(*change, "--book", file, stdout=writes)
    os.close(writes)
    assert done.returncode == UNHEARD
    assert "Traceback" not in done.stderr
    assert "ignored" not in done.stderr
    assert everything(file) == before


@pytest.mark.parametrize("change", CHANGES)
def test_nothing_is_recorded_where_the_output_is_closed(tmp_path: Path, change: tuple[str]) -> None:
    file = a_book(tmp_path)
    before = everything(file)
    done = run(*change, "--book", file, before=lambda: os.close(1))
    assert done.returncode == UNHEARD
    assert "nothing was recorded" in done.stderr.splitlines()[-1]
    assert everything(file) == before


def history_of(file: Path) -> list[str]:
    with opened(str(file)) as db:
        return [entry.told for entry in history(db)]


@pytest.mark.parametrize("change", CHANGES)
@pytest.mark.parametrize("room", [0, 512, 4096, 40_000])
def test_a_full_disk_leaves_the_book(tmp_path: Path, change: tuple[str], room: int) -> None:
    file = a_book(tmp_path)
    before = everything(file)

    def no_more() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))

    done = run(*change, "--book", file, before=no_more)
    assert done.returncode == 2
    assert "nothing was recorded" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr
    assert everything(file) == before
    check_book(file)


@pytest.fixture
def small(tmp_path: Path) -> Iterator[Path]:
    """Make a disk of 256 KiB; whoever may not mount one goes without."""
    folder = tmp_path / "small"
    folder.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=256k", "tmpfs", str(folder)]
    try:
        if subprocess.run(mount, capture_output=True, check=False).returncode:
            pytest.skip("a disk can be mounted by few")
    except FileNotFoundError:
        pytest.skip("no disk can be mounted here")
    yield folder
    subprocess.run(["umount", "--lazy", str(folder)], check=True)


def test_a_small_disk_fills_up(small: Path, tagend: Tagend) -> None:
    file = new_book(small / "book.db", [spool("A", "900 m"), spool("B", "900 m", None, "0.012 in")])
    tied(file, Short=3)
    refused = 0
    for _ in range(200):
        before = everything(file)
        tie = tagend("book", "tie", "--again", "1-3", "--anyway", "--book", file)
        if tie.status:
            assert tie.status == 2
            refused += 1
            assert everything(file) == before
            assert "disk is full" in tie.err.splitlines()[-1]
            if refused == 3:
                break
    assert refused == 3
    check_book(file)
    copy = tagend("book", "copy", small / "copy.db", "--book", file)
    assert "disk is full" in copy.err
    assert [path.name for path in small.iterdir()] == ["book.db"]


# Another user than the one who tests must find the program's own files.
OPEN_TO_ALL = all(folder.stat().st_mode & 0o5 == 0o5 for folder in Path(cards.__file__).parents)


@pytest.mark.skipif(not OPEN_TO_ALL, reason="the program stands in a folder that is closed")
@pytest.mark.parametrize(("closed", "mode"), [("book.db", 0o444), (".", 0o555)])
def test_without_permission_a_book_can_be_read_alone(shared: Path, closed: str, mode: int) -> None:
    file = a_book(shared)
    file.chmod(0o666)
    (shared / closed).chmod(mode)
    before = everything(file)
    assert as_nobody("recall", "--lot", "f7", "--book", file).returncode == 0
    for change in CHANGES:
        done = as_nobody(*change, "--book", file)
        assert done.returncode == 2
        assert str(file) in done.stderr.splitlines()[-1]
        assert "Traceback" not in done.stderr
    assert everything(file) == before


@pytest.mark.parametrize("closed", ["book.db", "."])
def test_a_book_or_a_folder_that_may_not_be_read_is_told(shared: Path, closed: str) -> None:
    file = a_book(shared)
    (shared / closed).chmod(0)
    assert str(file) in one_line(as_nobody("show", "--book", file))
    one_line(as_nobody("start", "--book", file))


def test_an_older_book_that_cannot_be_written_is_told(shared: Path) -> None:
    file = a_book(shared)
    file.chmod(0o444)
    newer = "from tagend.cards.book import file; file.VERSIONS += ('CREATE TABLE extra (id)',)"
    done = as_nobody("show", "--book", file, before=newer)
    assert "cannot be written" in one_line(done)
    assert [path.name for path in shared.iterdir()] == ["book.db"]


@pytest.mark.parametrize(
    "name", ["a b #?%41&x=1.db", "été 船.db", "file:x?mode=memory", "-dash.db", "q'\"`;.db"]
)
def test_a_book_may_be_called_anything(
    tmp_path: Path, tagend: Tagend, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    folder = tmp_path / "a #?% folder"
    folder.mkdir()
    monkeypatch.chdir(folder)
    monkeypatch.setenv("TAGEND_BOOK", name)
    assert tagend("book", "start").status == 0
    assert tagend("book", "history").status == 0
    assert tagend("book", "copy", "--", f"{name}2").status == 0
    assert sorted(path.name for path in folder.iterdir()) == sorted([name, f"{name}2"])
    monkeypatch.setenv("TAGEND_BOOK", f"{name}2")
    assert tagend("book", "show").status == 0


@pytest.mark.parametrize("name", [".", "", "none/copy.db", "book.db"])
def test_a_copy_that_cannot_be_made_leaves_nothing(
    tmp_path: Path, tagend: Tagend, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    file = a_book(tmp_path)
    before = file.read_bytes()
    monkeypatch.chdir(tmp_path)
    run = tagend("book", "copy", name, "--book", file)
    assert run.status == 2
    assert len(run.faults) == 1
    assert list(tmp_path.iterdir()) == [file]
    assert file.read_bytes() == before


class Interrupted(sqlite3.Connection):
    """A connection in which the person stops the run while a change is kept, or just before."""

    before = False

    def execute(self, sql: str, *values: Any) -> sqlite3.Cursor:
        if sql == "COMMIT" and self.before:
            raise KeyboardInterrupt
        found = super().execute(sql, *values)
        if sql == "COMMIT":
            raise KeyboardInterrupt
        return found


@pytest.mark.parametrize("before", [True, False])
def test_a_run_that_is_stopped_says_truly_whether_it_was_done(tmp_path: Path, before: bool) -> None:
    file = a_book(tmp_path)
    db = sqlite3.connect(file, isolation_level=None, factory=Interrupted)
    db.row_factory = sqlite3.Row
    Interrupted.before = before
    stopped = False
    try:
        with changing(db, NOW) as change:
            db.execute("UPDATE leader SET remark = 'all'")
            change.tell("all of it")
    except KeyboardInterrupt:
        stopped = True
    db.close()
    assert stopped == before
    assert ("all of it" in history_of(file)) == (not stopped)


def test_a_change_that_fails_half_way_is_none(tmp_path: Path) -> None:
    file = a_book(tmp_path)
    before = everything(file)
    with suppress(KeyError), change_of(file) as change:
        change.db.execute("UPDATE leader SET remark = 'half'")
        raise KeyError
    assert everything(file) == before


def test_a_book_whose_start_failed_can_be_started_again(tmp_path: Path, tagend: Tagend) -> None:
    file = tmp_path / "book.db"
    with pytest.raises(KeyError), started(str(file)):
        raise KeyError
    assert tagend("book", "show", "--book", file).status == 0
