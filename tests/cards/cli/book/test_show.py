from pathlib import Path

from tests.cards.cli.book.conftest import Book, told


def test_what_is_left_is_shown_by_spool_and_recipe(book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=4", "--tied", "2026-03-01")
    book("mark", "1", "fished")
    book("mark", "2-3", "given")
    out = book("show").out
    # 40 yd less 4 × 57 1/4 in = 33.638 yd
    assert "33.63 yd left" in out
    row = next(line.split("  ") for line in out.splitlines() if "Sandbar eight" in line)
    assert [cell for cell in row if cell][:2] == ["2", "Sandbar eight"]
    recipe = told(book("show", "--json"))["recipes"][0]
    assert (recipe["tied"], recipe["fished"], recipe["given"]) == (1, 1, 2)
    assert recipe["oldest"] == "2026-03-01"


def test_an_empty_book_shows_that_it_is(tagend: object, book: Book) -> None:
    book("undo")
    assert book("show").out.split() == ["spools", "none", "leaders", "in", "the", "wallets", "none"]
