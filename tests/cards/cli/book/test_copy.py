from pathlib import Path

from tests.cards.cli.book.conftest import Book
from tests.cards.cli.conftest import Tagend


def test_a_copy_holds_all_and_goes_its_own_way(tagend: Tagend, book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=2")
    assert book("copy", demo / "copy.db").status == 0
    book("mark", "1", "given")
    copied = tagend("book", "history", "--book", demo / "copy.db").out
    assert "tied batch 1" in copied
    assert "given" not in copied


def test_a_copy_replaces_nothing(book: Book, demo: Path) -> None:
    (demo / "there.db").write_text("mine")
    assert book("copy", demo / "there.db").status == 2
    assert (demo / "there.db").read_text() == "mine"
    assert book("copy", demo / "season.db").status == 2
    assert book("copy", demo / "no" / "folder.db").status == 2
