"""Many windows tie at the same time: what each has seen is what is drawn, or it is told."""

import shutil
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from tagend.cards.book.file import opened
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.tying import plan, start, tie_these
from tests.bookkeeping import check_book
from tests.cards.desk.conftest import SAMPLES

WINDOWS, EACH = 4, 2
COUNTS = {"sandbar-eight.toml": "1"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("rack.toml", "shop.toml", "sandbar-eight.toml", "wrack-line.png"):
        shutil.copy(SAMPLES / name, tmp_path)
    start(Desk(tmp_path), {"rack": True, "who": "Ada"})
    return tmp_path


def tie_until_done(folder: Path) -> int:
    """Plan and tie as a person does who looks again whenever the plan has changed."""
    desk, stale = Desk(folder), 0
    for _ in range(EACH):
        said = {"counts": COUNTS, "seen": plan(desk, {"counts": COUNTS})["seen"]}
        while changed := tie_these(desk, said).get("changed"):
            said["seen"] = changed["seen"]
            stale += 1
    return stale


def test_no_change_is_lost_and_no_leader_tied_on_a_stale_plan(folder: Path) -> None:
    with ThreadPoolExecutor(WINDOWS) as pool:
        list(pool.map(tie_until_done, [folder] * WINDOWS))
    assert check_book(folder / "book.db")["leader"] == WINDOWS * EACH


def test_a_plan_of_before_is_not_tied(folder: Path) -> None:
    desk = Desk(folder)
    seen = plan(desk, {"counts": COUNTS})["seen"]
    assert tie_these(desk, {"counts": COUNTS, "seen": seen})["batch"] == 1
    assert "changed" in tie_these(desk, {"counts": COUNTS, "seen": seen})
    with opened(str(folder / "book.db")) as db:
        assert db.execute("SELECT count(*) FROM leader").fetchone()[0] == 1
        told = [row["told"] for row in db.execute("SELECT told FROM entry ORDER BY id")]
    assert told == ["10 spools added", "tied batch 1: 1 Sandbar eight (no. 1)"]
