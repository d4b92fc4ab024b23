"""Recipes and paper read a length by one grammar."""

from collections.abc import Callable

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import parse_length as parse_recipe_length
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM, LENGTH_MM, read_length, with_unit
from tagend.layouts.paper.lengths import parse_length as parse_paper_length
from tests.strategies import lengths

# What a person may write, and what looks like it: digits, signs, units and odd bits between.
BITS = (
    *("0", "1", "2", "7", "30", "12345678", "1/4", "½", "⅞", "3/0", ".", ",", "-", "‑", "−", "⁄"),
    *(" ", "\u00a0", "x", "in", "inches", '"', "″", "”", "ft", "'", "′", "mm", "cm", "m", "yd"),
    *("thou", "lb", "IN"),
)


def points(mm: Fraction) -> float:
    return float(mm / INCH_MM * 72)  # a point is 1/72 in


@given(lengths)
def test_a_length_of_a_recipe_is_one_on_paper(length: object) -> None:
    assert parse_paper_length(str(length)) == points(parse_recipe_length(str(length)).mm)


def outcome(parse: Callable[[str], object], written: str) -> str:
    """Return what was found in a text, without what each room says of its own lengths."""
    try:
        parse(written)
    except Refused as refusal:
        found = refusal.faults[0].found
        return "a length" if found.endswith("is no likely length") else found
    return "a length"


@given(st.lists(st.sampled_from(BITS), max_size=6).map("".join))
def test_what_one_reads_the_other_reads_alike(written: str) -> None:
    assert outcome(parse_paper_length, written) == outcome(parse_recipe_length, written)


@pytest.mark.parametrize(
    "written", ['1/4"', "¼″", "0.25 in", "1/4 ”", "¼ inch", "1⁄4 in.", "6.35 mm", ".635cm"]
)
def test_a_quarter_inch_is_read_in_both_however_it_is_spelled(written: str) -> None:
    assert parse_recipe_length(written).mm == Fraction(127, 20)  # 25.4 / 4
    assert parse_paper_length(written) == pytest.approx(18)


def test_feet_and_inches_are_inches() -> None:
    found = read_length("7′ 6½″", "")
    assert (found.number, found.unit, found.amount) == (
        "7 ft 6 1/2",
        "in",
        90 * INCH_MM + INCH_MM / 2,
    )


@pytest.mark.parametrize("unit", LENGTH_MM)
def test_a_number_alone_takes_a_unit_and_a_length_keeps_its_own(unit: str) -> None:
    assert with_unit("1 1/2", unit) == f"1 1/2 {unit}"
    assert with_unit("3 in", unit) == "3 in"
