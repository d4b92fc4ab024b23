import csv
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.cards.cli.book.conftest import Book


@pytest.fixture
def tied(book: Book, demo: Path) -> Book:
    book("tie", f"{demo}/sandbar-eight.toml=2", "--tied", "2026-03-01")
    return book


def rows(file: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(file.read_text("utf-8-sig").splitlines()))


def test_leaders_and_draws_come_out_as_tables(tied: Book, demo: Path) -> None:
    assert tied("export", "-o", demo / "leaders.csv").status == 0
    first = rows(demo / "leaders.csv")[0]
    assert (first["number"], first["tied"], first["lots"]) == ("1", "2026-03-01", "K 114; F 7")
    tied("export", "--table", "draws", "-o", demo / "draws.csv")
    draws = rows(demo / "draws.csv")
    assert len(draws) == 12  # six sections of two leaders
    assert draws[0]["drawn_mm"] == "1454.15"  # 57 1/4 in
    tied("export", "--table", "spools", "-o", demo / "spools.csv")
    assert len(rows(demo / "spools.csv")) == 10


def test_a_workbook_holds_all_tables_and_is_the_same_each_time(tied: Book, demo: Path) -> None:
    assert tied("export", "-o", demo / "a.xlsx").status == 0
    assert tied("export", "-o", demo / "b.xlsx").status == 0
    assert (demo / "a.xlsx").read_bytes() == (demo / "b.xlsx").read_bytes()
    with ZipFile(demo / "a.xlsx") as book:
        names = book.read("xl/workbook.xml").decode()
        assert b"Sandbar eight" in book.read("xl/sharedStrings.xml")
    assert all(name in names for name in ("leaders", "draws", "spools", "history"))


def test_no_cell_is_a_formula(tied: Book, demo: Path) -> None:
    tied("mark", "1", "given", "--remark", "=1+1")
    tied("export", "-o", demo / "a.csv")
    assert rows(demo / "a.csv")[0]["remark"] == "'=1+1"
    tied("export", "-o", demo / "a.xlsx")
    with ZipFile(demo / "a.xlsx") as book:
        assert b"<f>" not in book.read("xl/worksheets/sheet1.xml")


def test_a_table_that_is_there_is_not_lost_in_silence(tied: Book, demo: Path) -> None:
    (demo / "list.csv").write_text("mine")
    assert tied("export", "-o", demo / "list.csv").status == 2
    assert tied("export", "-o", demo / "season.db", "--replace").status == 2  # the book itself
    assert tied("export", "-o", demo / "list.csv", "--replace").status == 0
