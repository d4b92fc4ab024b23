"""Many runs on one book at once: all get their turn, and no number is given twice."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tagend.cards.book import file as book_file
from tagend.cards.book.file import opened
from tagend.cards.book.history import history
from tagend.cards.book.spools import spools
from tagend.cards.book.stored import NM
from tests.bookkeeping import check_book, new_book, spool
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT

RUNS = 20


def run(*arguments: str | Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "tagend.cards", "book", *map(str, arguments)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def test_twenty_runs_tie_at_once(tmp_path: Path, demo: Path, tagend: Tagend) -> None:
    file = tmp_path / "book.db"
    rack = demo / "rack.toml"
    rack.write_text(rack.read_text().replace('"12 yd"', '"200 yd"').replace(" yd", "9 yd"))
    assert tagend("book", "start", "--rack", rack, "--book", file).status == 0
    with opened(str(file)) as db:
        before = sum(one.left_mm for one in spools(db))
    counts = [1 + place % 4 for place in range(RUNS)]
    recipe = demo / "sandbar-eight.toml"
    runs = [run("tie", f"{recipe}={count}", "--book", file, "--json") for count in counts]
    assert [one.communicate() and one.returncode for one in runs] == [0] * RUNS
    check_book(file)
    with opened(str(file)) as db:
        batches = dict(map(tuple, db.execute("SELECT batch, count(*) FROM leader GROUP BY batch")))
        assert sorted(batches) == list(range(1, RUNS + 1))
        assert sorted(batches.values()) == sorted(counts)
        # Each of the leaders took the same.
        one = db.execute("SELECT sum(nm) FROM draw WHERE leader = 1").fetchone()[0]
        drawn = before - sum(each.left_mm for each in spools(db))
        assert drawn * NM == one * sum(counts)


def test_one_waits_for_another_only_so_long(
    tagend: Tagend, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(book_file, "PATIENCE", 0.05)
    file = new_book(tmp_path / "book.db")
    with opened(str(file)) as db:
        db.execute("BEGIN IMMEDIATE")
        assert tagend("book", "show", "--book", file).status == 0  # whoever reads waits for none
        (fault,) = tagend("book", "mark", "--spool", "Thin A", "bad", "--book", file).faults
        assert "another run" in fault
        db.execute("ROLLBACK")
        db.execute("BEGIN EXCLUSIVE")
        (fault,) = tagend("book", "show", "--book", file).faults
        assert "another run" in fault


@pytest.mark.skipif(os.name == "nt", reason="it stops runs otherwise")
def test_a_reader_sees_a_whole_change_or_none(tmp_path: Path) -> None:
    file = new_book(tmp_path / "book.db", [spool("Thick", "100 m"), spool("Thin", "100 m")])
    runs = [run("mark", "--spool", "Thick", "bad", "--book", file) for _ in range(4)]
    runs += [run("history", "--json", "--book", file) for _ in range(4)]
    for one in runs:
        one.communicate()
        assert one.returncode == 0
    with opened(str(file)) as db:
        assert len(history(db)) == 5
