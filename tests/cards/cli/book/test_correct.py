from pathlib import Path

import pytest

from tests.cards.cli.book.conftest import Book, left, told


@pytest.fixture
def tied(book: Book, demo: Path) -> Book:
    (demo / "more.csv").write_text(
        "label,material,diameter,left,lot\nStiff 25b,hard nylon,0.023 in,2 yd,K 120\n", "utf-8"
    )
    book("tie", f"{demo}/sandbar-eight.toml=4", "--tied", "2026-03-01")
    book("add", demo / "more.csv")
    return book


def numbers(book: Book, lot: str) -> list[int]:
    found: list[int] = told(book("recall", "--lot", lot, "--json"))["numbers"]
    return found


PIECE = 1454.15  # 57 1/4 in in mm; the sample's first cut


def test_another_spool_was_used(tied: Book) -> None:
    before = left(tied)
    assert tied("correct", "3", "--section", "1", "--spool", "stiff 25b").status == 0
    assert numbers(tied, "K 114") == [1, 2, 4]
    assert numbers(tied, "K 120") == [3]
    after = left(tied)
    assert round(after["Stiff 25"] - before["Stiff 25"], 4) == PIECE
    assert round(before["Stiff 25b"] - after["Stiff 25b"], 4) == PIECE


def test_a_spoiled_piece_is_drawn_and_not_in_the_leader(tied: Book) -> None:
    before = left(tied)
    tied("correct", "3", "--section", "1", "--spoiled", "--spool", "Stiff 25b")
    assert numbers(tied, "K 114") == [1, 2, 4]
    after = left(tied)
    assert after["Stiff 25"] == before["Stiff 25"]
    assert round(before["Stiff 25b"] - after["Stiff 25b"], 4) == PIECE
    tied("correct", "3", "--section", "1", "--spoiled")
    run = tied("correct", "3", "--section", "1", "--spoiled")  # 72 in hold one piece of 57 1/4 in
    assert run.status == 2
    assert "book correct --spool" in run.err


def test_a_leader_that_was_not_tied_gives_its_line_back(tied: Book) -> None:
    before = left(tied)
    tied("correct", "3-4", "--not-tied")
    assert numbers(tied, "F 7") == [1, 2]
    assert round(left(tied)["Stiff 25"] - before["Stiff 25"], 4) == 2 * PIECE
    assert tied("mark", "3", "given").status == 2


def test_the_day_was_another(tied: Book) -> None:
    tied("correct", "4", "--tied", "2026-03-02")
    assert told(tied("recall", "--since", "2026-03-02", "--json"))["numbers"] == [4]


def test_what_is_left_and_the_lot_were_others(tied: Book) -> None:
    tied("correct", "--spool", "Stiff 25", "--left", "30 yd", "--lot", "K 141")
    assert left(tied)["Stiff 25"] == 30 * 914.4
    assert numbers(tied, "k141") == [1, 2, 3, 4]


@pytest.mark.parametrize(
    "words",
    [
        ("3",),
        ("3", "--section", "1"),
        ("3", "--section", "9", "--spoiled"),
        ("--section", "1", "--spoiled"),
        ("3", "--not-tied", "--tied", "2026-01-01"),
        ("--left", "3 yd"),
        ("3", "--spool", "Stiff 25", "--left", "3 yd"),
        ("--spool", "Stiff 25", "--left", "three"),
        ("--spool", "none", "--left", "3 yd"),
    ],
)
def test_what_is_not_understood_changes_nothing(tied: Book, words: tuple[str, ...]) -> None:
    before = tied("history").out, left(tied)
    assert tied("correct", *words).status == 2
    assert (tied("history").out, left(tied)) == before
