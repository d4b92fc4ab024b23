"""Seasons with what is rare: thousands of one recipe, odd names, variants, a shop file lost."""

from pathlib import Path

import pytest

from tagend.cards.book.file import opened
from tests.bookkeeping import check_book, new_book, spool
from tests.cards.cli.book.conftest import Book, left, told
from tests.cards.cli.conftest import Tagend

SHOP = """
[materials.silk]
code = 'SK'
kind = 'nylon'
"""
SILKEN = """
name = "Silken"
[[section]]
length = "60 in"
diameter = "0.020 in"
material = "silk"
[[section]]
length = "30 in"
diameter = "0.017 in"
material = "silk"
[fly]
knot = "non-slip loop"
"""
RACK = """
[[spool]]
label = "Silk 20"
material = "silk"
diameter = "0.020 in"
left = "100 yd"
lot = "S 1"
[[spool]]
label = "Silk 17"
material = "silk"
diameter = "0.017 in"
left = "100 yd"
lot = "S 1"
"""


@pytest.fixture
def silk(tmp_path: Path, tagend: Tagend) -> list[str]:
    """Return the option that names a book of a shop with a material of its own."""
    for name, text in (("shop.toml", SHOP), ("silken.toml", SILKEN), ("rack.toml", RACK)):
        (tmp_path / name).write_text(text)
    book, shop = ["--book", str(tmp_path / "b.db")], ["--shop", str(tmp_path / "shop.toml")]
    rack, words = tmp_path / "rack.toml", f"{tmp_path / 'silken.toml'}=2"
    assert tagend("book", "start", "--rack", rack, *book, *shop).status == 0
    assert tagend("book", "tie", words, "--anyway", *book, *shop).status == 0
    return book


def test_without_the_shop_file_what_was_tied_is_found_all_the_same(
    tagend: Tagend, silk: list[str]
) -> None:
    for command in (
        ("show",),
        ("recall", "--lot", "s1"),
        ("mark", "1", "given"),
        ("correct", "2", "--section", "1", "--spoiled"),
        ("undo",),
        ("history",),
    ):
        run = tagend("book", *command, *silk)
        assert run.status == 0, run.err
        assert run.out


def test_without_the_shop_file_no_more_is_tied_and_its_word_is_named(
    tagend: Tagend, silk: list[str]
) -> None:
    for command in (("tie", "--again", "1"), ("plan", "--again", "1")):
        faults = tagend("book", *command, *silk).faults
        assert all("silk" in fault and "shop" in fault for fault in faults), faults


def test_thousands_of_one_recipe_are_tied_and_undone(tagend: Tagend, tmp_path: Path) -> None:
    file = new_book(
        tmp_path / "b.db", [spool("A", "9000 m"), spool("B", "9000 m", None, "0.012 in")]
    )
    recipe = tmp_path / "r.toml"
    recipe.write_text(
        'name = "Two"\nlengths = "cut"\n'
        '[[section]]\nlength = "20 in"\ndiameter = "0.020 in"\nmaterial = "nylon"\n'
        '[[section]]\nlength = "20 in"\ndiameter = "0.012 in"\nmaterial = "nylon"\n'
    )
    book = ("--book", file)
    assert tagend("book", "tie", f"{recipe}=10000", "--anyway", *book).status == 0
    assert check_book(file)["leader"] == 10_000
    assert tagend("book", "mark", "1-10000", "given", *book).status == 0
    assert tagend("book", "undo", *book).status == 0
    assert tagend("book", "undo", *book).status == 0
    assert check_book(file)["leader"] == 0
    assert tagend("book", "tie", f"{recipe}=1", "--anyway", *book).status == 0
    assert tagend("book", "recall", "--numbers", "10001", *book).status == 0


def test_one_recipe_in_two_files_is_one_order(book: Book, demo: Path) -> None:
    one, other = demo / "sandbar-eight.toml", demo / "again.toml"
    other.write_text(f"# the same\n{one.read_text()}")
    batch = told(book("tie", f"{one}=2", f"{other}=3", f"{one}=1", "--json"))
    assert batch["batch"] == 1
    found = told(book("recall", "--batch", "1", "--json"))
    assert found["numbers"] == [1, 2, 3, 4, 5, 6]


def test_names_notes_and_variants_come_back_as_they_were(book: Book, demo: Path) -> None:
    text = (demo / "sandbar-eight.toml").read_text()
    name = 'L\'été \\"8\\" \\\\ % 語, --; DROP'
    plain = 'L\'été "8" \\ % 語, --; DROP'
    recipe = demo / "odd.toml"
    recipe.write_text(text.replace('"Sandbar eight"', f'"{name}"'))
    run = book("tie", f"{recipe}=2")
    assert run.status == 0, run.err
    leaders = told(book("recall", "--recipe", plain, "--json"))["leaders"]
    assert {one["recipe"] for one in leaders} == {plain}
    assert told(book("tie", "--again", "1", "--json"))["batch"] == 2
    assert told(book("recall", "--recipe", plain, "--json"))["numbers"] == [1, 2, 3]
    assert plain in book("history").out


def test_a_spool_is_opened_by_whatever_is_cut_of_it(book: Book, demo: Path) -> None:
    sandbar = demo / "sandbar-eight.toml"
    assert book("tie", f"{sandbar}=2", "--tied", "2026-05-03").status == 0
    assert book("correct", "2", "--section", "1", "--spool", "stiff 26").status == 0
    spools = {one["spool"]: one for one in told(book("show", "--json"))["spools"]}
    assert spools["Stiff 26"]["opened"] == spools["Stiff 25"]["opened"] == "2026-05-03"


def test_what_a_spool_lacks_is_refused_before_it_is_told(book: Book, demo: Path) -> None:
    assert book("tie", f"{demo / 'sandbar-eight.toml'}=2").status == 0
    assert book("correct", "--spool", "Stiff 26", "--left", "1/7 in").status == 0
    before = left(book)
    run = book("correct", "1-2", "--section", "1", "--spool", "Stiff 26")
    (fault,) = run.faults
    assert run.status == 2
    assert "--spool 'Stiff 26' --left" in fault
    assert left(book) == before


@pytest.mark.parametrize(
    "words",
    [
        ("1", "--section", "1"),
        ("1", "--tied", "2026-01-01", "--spool", "Stiff 26"),
        ("1", "--not-tied", "--spoiled"),
        ("--spool", "Stiff 26"),
        ("--spool", "Stiff 26", "--left", "3 yd", "--spoiled"),
        ("1", "--spool", "Stiff 26", "--left", "3 yd"),
        ("--left", "3 yd"),
        (),
    ],
)
def test_a_correction_that_would_leave_out_a_word_is_refused(
    book: Book, demo: Path, words: tuple[str, ...]
) -> None:
    assert book("tie", f"{demo / 'sandbar-eight.toml'}=1").status == 0
    assert book("correct", *words).status == 2
    with opened(str(demo / "season.db")) as db:
        assert db.execute("SELECT count(*) FROM entry").fetchone()[0] == 2


def test_labels_alike_but_for_case_are_refused_together(tagend: Tagend, tmp_path: Path) -> None:
    rack = tmp_path / "rack.toml"
    rack.write_text(RACK.replace("silk", "nylon").replace("Silk 17", "SILK 20"))
    (fault,) = tagend("book", "start", "--rack", rack, "--book", tmp_path / "b.db").err.splitlines()
    assert "SILK 20" in fault


def test_who_did_it_is_one_line_of_writing(book: Book, demo: Path) -> None:
    run = book("mark", "--spool", "Stiff 26", "bad", "--who", "A\x1b[31m")
    assert run.status == 2
    assert len(run.faults) == 1


def test_a_number_below_nought_stays_one_in_a_table(book: Book, demo: Path) -> None:
    assert book("correct", "--spool", "Stiff 26", "--left", "31 yd").status == 0  # 30 before
    table = demo / "draws.csv"
    assert book("export", "--table", "draws", "-o", table).status == 0
    assert table.read_text().splitlines()[1].endswith(",-914.4")
