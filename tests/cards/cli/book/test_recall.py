from datetime import date
from pathlib import Path

import pytest

from tagend.cards.base.days import months_before
from tests.cards.cli.book.conftest import Book, told


@pytest.fixture
def season(book: Book, demo: Path) -> Book:
    """Two batches: no. 1 to 5 of two recipes, no. 6 and 7 later of one."""
    book(
        "tie",
        f"{demo}/sandbar-eight.toml=3",
        f"{demo}/breakwater-ten.toml=2",
        "--tied",
        "2026-03-01",
    )
    book("tie", f"{demo}/sandbar-eight.toml=2", "--tied", "2026-04-01")
    return book


@pytest.mark.parametrize(
    ("asked", "numbers"),
    [
        (("--lot", "K 114"), [1, 2, 3, 6, 7]),
        (("--lot", "k114"), [1, 2, 3, 6, 7]),
        (("--lot", " K-0114 "), [1, 2, 3, 6, 7]),
        (("--spool", "clear 34"), [4, 5]),
        (("--recipe", "sandbar EIGHT"), [1, 2, 3, 6, 7]),
        (("--batch", "02"), [6, 7]),
        (("--batch", "batch 1"), [1, 2, 3, 4, 5]),
        (("--since", "2026-04-01"), [6, 7]),
        (("--tied", "2026-03-01"), [1, 2, 3, 4, 5]),
        (("--lot", "F 7", "--batch", "1"), [1, 2, 3]),
        (("--numbers", "0002-4"), [2, 3, 4]),
        (("--older-than", "0"), [1, 2, 3, 4, 5, 6, 7]),
        (("--older-than", "1200"), []),
        (("--state", "given"), []),
        ((), [1, 2, 3, 4, 5, 6, 7]),
    ],
)
def test_leaders_are_found_by(season: Book, asked: tuple[str, ...], numbers: list[int]) -> None:
    assert told(season("recall", *asked, "--json"))["numbers"] == numbers


def test_a_lot_leads_to_the_leaders_that_hold_it_and_no_others(season: Book, demo: Path) -> None:
    # Two spools of one line: the first gives what it has, and only those leaders hold its lot.
    (demo / "two.csv").write_text(
        "label,material,diameter,left,lot\n"
        "Short,nylon,0.021 in,50 in,B 22\nLong,nylon,0.021 in,90 yd,C 1\n",
        "utf-8",
    )
    (demo / "one.toml").write_text(
        'name = "One piece"\nlengths = "cut"\n[[section]]\nlength = "20 in"\n'
        'diameter = "0.021 in"\nmaterial = "nylon"\n',
        "utf-8",
    )
    season("add", demo / "two.csv")
    season("tie", f"{demo}/one.toml=5")
    # 50 in are two pieces of 20 in; the other three leaders are of the long spool.
    assert told(season("recall", "--lot", "b22", "--json"))["numbers"] == [8, 9]
    assert told(season("recall", "--lot", "C1", "--json"))["numbers"] == [10, 11, 12]
    run = season("recall", "--lot", "B22")
    assert "Short, lot B 22: 0.021 in nylon" in run.out
    assert run.err == "2 of 12 leaders: no. 8-9\n"


def test_an_unknown_name_is_an_error_with_near_ones(season: Book) -> None:
    for asked, near in (
        (("--lot", "K 141"), "K 114"),
        (("--spool", "Cleer 8"), "Clear 8"),
        (("--recipe", "Sandbar six"), "Sandbar eight"),
        (("--batch", "9"), "1, 2"),
        (("--numbers", "99"), "1-7"),
    ):
        run = season("recall", *asked)
        assert run.status == 2
        assert near in run.err
        assert "0 of" not in run.err


def test_several_alike_are_listed_and_an_exact_one_wins(season: Book, demo: Path) -> None:
    (demo / "more.csv").write_text(
        "label,material,diameter,left,lot\n"
        "A,nylon,0.021 in,9 yd,K114\nB,nylon,0.020 in,9 yd,k 114\n",
        "utf-8",
    )
    season("add", demo / "more.csv")
    run = season("recall", "--lot", "k-114")
    assert run.status == 2
    assert "'K 114', 'K114', 'k 114'" in run.err
    assert (
        season("recall", "--lot", "K114").err == "0 of 7 leaders\n"
    )  # a lot of which none was tied


def test_states_and_remarks_are_listed(season: Book) -> None:
    season("mark", "2", "given", "--remark", "to the boat", "--on", "2026-05-01")
    lines = season("recall", "--lot", "F 7").out.splitlines()
    assert lines[2].endswith("given 2026-05-01: to the boat")


def test_months_are_counted_to_the_last_day_there_is() -> None:
    assert months_before(date(2026, 3, 31), 1) == date(2026, 2, 28)
    assert months_before(date(2026, 1, 15), 12) == date(2025, 1, 15)
    assert months_before(date(2024, 2, 29), 12) == date(2023, 2, 28)
