from pathlib import Path

import pytest

from tests.cards.cli.book.conftest import Book, left, told


@pytest.fixture
def tied(book: Book, demo: Path) -> Book:
    book("tie", f"{demo}/sandbar-eight.toml=6", "--tied", "2026-03-01")
    return book


def states(book: Book) -> list[str]:
    return [leader["state"] for leader in told(book("recall", "--json"))["leaders"]]


def test_leaders_are_marked_by_number(tied: Book) -> None:
    run = tied("mark", "2-3", "06", "discarded", "--remark", "windknots")
    assert (run.status, run.out) == (0, "marked no. 2-3, 6 discarded: windknots\n")
    assert states(tied) == ["tied", "discarded", "discarded", "tied", "tied", "discarded"]
    (leader,) = told(tied("recall", "--numbers", "6", "--json"))["leaders"]
    assert leader["remark"] == "windknots"


def test_a_mark_may_be_taken_back_by_another(tied: Book) -> None:
    tied("mark", "2", "given", "--on", "2026-04-01")
    tied("mark", "2", "tied")
    assert states(tied) == ["tied"] * 6


@pytest.mark.parametrize(
    "words", [("2",), ("given",), ("2-9", "given"), ("x", "given"), ("2", "lost"), ("5-2", "given")]
)
def test_what_is_not_understood_marks_nothing(tied: Book, words: tuple[str, ...]) -> None:
    assert tied("mark", *words).status == 2
    assert states(tied) == ["tied"] * 6


def test_a_number_that_was_undone_is_told_so(tied: Book, demo: Path) -> None:
    tied("tie", f"{demo}/sandbar-eight.toml=1")
    tied("undo")
    run = tied("mark", "7", "given")
    assert run.status == 2
    assert "no. 7 was given, and undone" in run.err


def test_an_empty_spool_has_nothing_left_and_a_bad_one_is_good_again(tied: Book) -> None:
    tied("mark", "--spool", "clear 8", "empty", "--on", "2026-04-01")
    assert left(tied)["Clear 8"] == 0
    tied("mark", "--spool", "Stiff 25", "bad", "--remark", "brittle")
    assert "bad" in tied("show").out
    tied("mark", "--spool", "Stiff 25", "good")
    assert "bad" not in tied("show").out
    assert tied("mark", "3", "--spool", "Stiff 25", "bad").status == 2
