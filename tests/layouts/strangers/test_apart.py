"""A stranger's file is read in a child process, and whatever it does there ends in one line."""

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable, library
from tests.layouts.strangers import readers
from tests.tree import ROOT


def test_what_the_reader_gives_comes_back_bytes_and_all() -> None:
    data = bytes(range(256)) * 1000
    assert apart(readers.gives, data) == [data, len(data), {"text": "Łódź", "raw": data[:2]}]


@pytest.mark.parametrize(
    ("reader", "told"),
    [
        (readers.refuses, "it is too old; save it anew"),
        (readers.fails, "it is damaged or cut off; save it again"),
        (readers.crashes, "its reader broke off"),
        (readers.leaves, "its reader broke off"),
    ],
)
def test_a_reader_that_fails_is_told_of_in_one_line(
    reader: Callable[[bytes], object], told: str
) -> None:
    with pytest.raises(Unreadable) as refusal:
        apart(reader, b"")
    assert str(refusal.value).startswith(told)
    assert "\n" not in str(refusal.value)


@pytest.mark.skipif(sys.platform != "linux", reason="other systems need not hold to a limit")
def test_a_reader_gets_no_more_memory_than_its_limit() -> None:
    with pytest.raises(Unreadable, match="wanted more than 512 MB; simplify it"):
        apart(readers.hoards, b"")


@pytest.mark.parametrize("reader", [readers.hangs, readers.spins])
def test_a_reader_that_finds_no_end_is_ended(reader: Callable[[bytes], object]) -> None:
    begun = time.monotonic()
    with pytest.raises(Unreadable, match="takes longer than 1 s to read; simplify it"):
        apart(reader, b"", 1)
    assert time.monotonic() - begun < 10


def test_a_reader_cannot_write_a_file(tmp_path: Path) -> None:
    if sys.platform == "win32":
        pytest.skip("limits of a process are of POSIX")
    with pytest.raises(Unreadable):
        apart(readers.writes, str(tmp_path / "x").encode())
    assert not (tmp_path / "x").exists() or (tmp_path / "x").read_bytes() == b""


def test_the_child_loads_nothing_of_the_program_that_started_it() -> None:
    assert apart(readers.loaded, b"") == []


MAIN = "from tagend.cards.cli import main; main()"


@pytest.mark.parametrize("start", [["-m", "tagend.cards"], ["-c", MAIN]])
def test_however_the_program_was_started_it_reads_apart(start: list[str], tmp_path: Path) -> None:
    (tmp_path / "x.pdf").write_bytes(b"%PDF-1.7\n")
    run = subprocess.run(
        [sys.executable, *start, "read", str(tmp_path / "x.pdf")],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    assert run.returncode == 2
    assert run.stderr.count("\n") == 1
    assert "damaged" in run.stderr


def test_a_missing_library_says_what_to_install() -> None:
    with pytest.raises(Unreadable, match=r"write: pip install 'tagend\[logo\]'"):
        library("a_library_that_is_nowhere", "tagend[logo]")
