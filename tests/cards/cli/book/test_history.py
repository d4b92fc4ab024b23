from pathlib import Path

from tests.cards.cli.book.conftest import Book, told


def test_every_change_is_told_with_who_made_it(book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=2", "--who", "R")
    book("mark", "1", "given")
    book("undo")
    entries = told(book("history", "--json"))["entries"]
    assert [entry["number"] for entry in entries] == [1, 2, 3, 4]
    assert [entry["stands"] for entry in entries] == [True, True, False, True]
    assert (entries[1]["who"], entries[3]["undoes"]) == ("R", 3)
    lines = book("history").out.splitlines()
    assert "10 spools added" in lines[0]
    assert lines[2].endswith("(undone)")
