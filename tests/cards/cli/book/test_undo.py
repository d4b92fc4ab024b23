from pathlib import Path

from tests.cards.cli.book.conftest import Book, left, told


def test_changes_are_taken_back_in_order(book: Book, demo: Path) -> None:
    before = left(book)
    book("tie", f"{demo}/sandbar-eight.toml=2")
    book("mark", "1", "given")
    assert "marked no. 1 given" in book("undo").out
    assert [leader["state"] for leader in told(book("recall", "--json"))["leaders"]] == ["tied"] * 2
    assert "tied batch 1" in book("undo").out
    assert left(book) == before
    assert told(book("recall", "--json"))["of"] == 0


def test_an_undoing_can_be_undone_while_it_is_the_last(book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=2")
    after = left(book)
    book("undo")
    assert book("undo", "3").status == 0
    assert left(book) == after
    assert told(book("recall", "--json"))["numbers"] == [1, 2]


def test_nothing_is_taken_back_from_under_later_changes(book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=2")
    book("mark", "1", "given")
    run = book("undo", "2")
    assert run.status == 2
    assert "undo 3 first" in run.err
    assert book("undo", "99").status == 2


def test_when_all_is_undone_there_is_nothing_left_to_undo(book: Book) -> None:
    book("undo")
    run = book("undo")
    assert run.status == 2
    assert "nothing to undo" in run.err
