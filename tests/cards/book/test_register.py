from datetime import date

import pytest

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.book.register import (
    Tied,
    chosen,
    entered,
    lots_of,
    next_number,
    read_register,
    tied_leaders,
)
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.layouts.base.faults import Refused
from tests.leaders import SANDBAR, write
from tests.written import PRACTICE, leader, recipe, section

DAY = date(2026, 5, 31)


def tied(number: int, day: str = "2026-05-31", lots: tuple[str, ...] = ()) -> Tied:
    return Tied(number, date.fromisoformat(day), "Sandbar eight", "5H", ("nylon",), lots)


def spool(label: str, diameter: str, lot: str | None, material: str = "nylon") -> Spool:
    return Spool(label, material, parse_diameter(diameter), parse_line_length("9 m"), None, lot)


def test_what_is_entered_is_read_back() -> None:
    leaders = [tied(1, lots=("Stiff 25: K 114", "Clear 8: F 7")), tied(2, "2026-06-01")]
    assert read_register(entered(None, leaders)) == leaders
    assert read_register(entered(entered(None, leaders[:1]), leaders[1:])) == leaders


def test_numbers_go_on_from_the_highest() -> None:
    assert next_number([]) == 1
    assert next_number([tied(7), tied(3)]) == 8


def test_an_entry_holds_the_check_of_the_label() -> None:
    entry, other = tied_leaders(leader(SANDBAR), DAY, (4, 5), None, PRACTICE)
    assert (entry.number, other.number) == (4, 5)
    assert entry.check == write(SANDBAR)[-2:] == "5H"
    assert entry.materials == ("hard nylon", "fluorocarbon")
    assert entry.lots == ()


def test_a_check_of_two_figures_outlives_a_spreadsheet() -> None:
    data = entered(None, [tied(1)]).replace(b",5H,", b",7,")
    assert read_register(data)[0].check == "07"


def test_every_spool_that_may_have_given_line_stands_with_its_lot() -> None:
    taper = leader(
        recipe(
            section("30 in", "0.015 in"),
            section("9 ft", "0.013 in", bought=True),
            section("20 in", "0.010 in", "fluorocarbon"),
        )
    )
    rack = Rack(
        (
            spool("inches", "0.015 in", "A; 1"),
            spool("metric", "0.38 mm", "0012"),  # 0.381 mm are 0.015 in
            spool("no lot", "0.015 in", None),
            spool("bought", "0.013 in", "B"),
            spool("unlike", "0.010 in", "C"),
            spool("tippet", "0.010 in", "D", "fluorocarbon"),
        )
    )
    assert lots_of(taper, rack) == ("inches: A, 1", "metric: 0012", "tippet: D")


def test_a_bad_lot_finds_its_leaders() -> None:
    leaders = [
        tied(1, lots=("Stiff 25: K 114",)),
        tied(2, lots=("Stiff 25: K 1145", "Clear: F 7")),
        tied(3, lots=("Clear: F 7", "Stiff: k 114")),
        tied(4, lots=("Odd: A, 1",)),
    ]
    assert [found.number for found in chosen(leaders, lot=" K 114 ")] == [1, 3]
    assert [found.number for found in chosen(leaders, lot="114")] == []
    assert [found.number for found in chosen(leaders, lot="A; 1")] == [4]
    assert [found.number for found in chosen(leaders, lot="stiff 25: k 114")] == [1]


def test_age_and_recipe_choose_together() -> None:
    leaders = [tied(1, "2025-06-01"), tied(2, "2026-06-01")]
    assert list(chosen(leaders)) == leaders
    assert list(chosen(leaders, tied_before=date(2026, 6, 1))) == leaders[:1]
    assert list(chosen(leaders, recipe="sandbar EIGHT ")) == leaders
    assert list(chosen(leaders, recipe="Sandbar")) == []


def test_every_row_that_cannot_be_read_is_named() -> None:
    data = entered(None, [tied(1), tied(2), tied(3)])
    wrong = data.replace(b"\n2,2026-05-31", b"\nx,2026-05-31").replace(
        b"\n3,2026-05-31", b"\n3,31/05/2026"
    )
    with pytest.raises(Refused) as refusal:
        read_register(wrong)
    assert str(refusal.value).splitlines() == [
        "row 3: 'x' and '2026-05-31' are no number and day; write such as 17 and 2026-05-31",
        "row 4: '3' and '31/05/2026' are no number and day; write such as 17 and 2026-05-31",
    ]
