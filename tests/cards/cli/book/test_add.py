from pathlib import Path

import pytest

from tests.cards.cli.book.conftest import Book, left, told

TABLE = """label,material,diameter,left,strength,lot,bought
Clear 12,fluorocarbon,0.012 in,50 m,12 lb,G 2,2026-03-01
Stiff 20,hard nylon,0.021 in,30 yd,20 lb,,
"""


def test_spools_are_added_and_those_that_are_there_left_alone(book: Book, demo: Path) -> None:
    rack = demo / "rack.toml"
    book("tie", f"{demo}/sandbar-eight.toml=2")
    before = left(book)
    rack.write_text(
        rack.read_text("utf-8") + '[[spool]]\nlabel = "Clear 12"\nmaterial = "fluorocarbon"\n'
        'diameter = "0.012 in"\nleft = "50 m"\nbought = "2026-03-01"\n',
        "utf-8",
    )
    run = book("add", rack)
    assert (run.status, run.out) == (0, "1 spool added, 10 were there already\n")
    assert left(book) == {**before, "Clear 12": 50_000}
    entries = book("history").out
    run = book("add", rack, "--json")  # nothing new: nothing to take back
    assert told(run) == {"entry": None, "done": "0 spools added, 11 were there already"}
    assert book("history").out == entries


def test_spools_come_from_a_table(book: Book, demo: Path) -> None:
    (demo / "bought.csv").write_text(TABLE, "utf-8")
    assert book("add", demo / "bought.csv").status == 0
    spools = {spool["spool"]: spool for spool in told(book("show", "--json"))["spools"]}
    assert spools["Clear 12"]["bought"] == "2026-03-01"
    assert spools["Clear 12"]["lot"] == "G 2"
    assert spools["Stiff 20"]["left_mm"] == 30 * 914.4  # a yard is 914.4 mm by definition


@pytest.mark.parametrize(
    ("table", "where"),
    [
        (TABLE.replace("50 m", "50"), "row 2, left"),
        (TABLE.replace("hard nylon", "string"), "row 3, material"),
        ("label\n", "bought.csv"),
    ],
)
def test_a_wrong_table_is_told_by_row(book: Book, demo: Path, table: str, where: str) -> None:
    (demo / "bought.csv").write_text(table, "utf-8")
    run = book("add", demo / "bought.csv")
    assert run.status == 2
    assert where in run.err
    assert len(left(book)) == 10


def test_another_spool_needs_a_label_of_its_own(book: Book, demo: Path) -> None:
    rack = demo / "rack.toml"
    rack.write_text(rack.read_text("utf-8").replace('"F 7"', '"F 9"'), "utf-8")
    run = book("add", rack)
    assert run.status == 2
    assert "Clear 8" in run.err
    assert "lot F 7" in run.err
