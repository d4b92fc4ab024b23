import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.shown_lengths import (
    ShownUnit,
    diameter_in,
    length,
    length_in,
    length_number,
    line_to_buy,
    long_length,
    strength_in,
)
from tagend.cards.base.units import parse_diameter, parse_length, parse_strength

INCH = Fraction("25.4")


@pytest.mark.parametrize(
    ("mm", "unit", "number"),
    [
        (34 * INCH, "in", "34"),
        (Fraction("34.25") * INCH, "in", "34 1/4"),
        (INCH / 2, "in", "1/2"),
        (Fraction("34.03") * INCH, "in", "34"),  # 0.03 is less than half a sixteenth
        (Fraction("34.04") * INCH, "in", "34 1/16"),
        (Fraction("0.99") * INCH, "in", "1"),
        (Fraction(0), "in", "0"),
        (-INCH / 16, "in", "-1/16"),
        (Fraction(875), "cm", "87.5"),
        (Fraction(870), "cm", "87"),
        (Fraction(5), "cm", "0.5"),
        (Fraction(-5), "cm", "-0.5"),
        (Fraction("874.6"), "mm", "875"),
    ],
)
def test_a_length_is_spelled_to_the_finest_mark_of_a_tape(
    mm: Fraction, unit: ShownUnit, number: str
) -> None:
    assert length_number(mm, unit) == number
    assert length(mm, unit) == f"{number} {unit}"


@pytest.mark.parametrize(
    ("mm", "unit", "words"),
    [
        (108 * INCH, "in", "9 ft"),
        (Fraction("110.25") * INCH, "in", "9 ft 2 1/4 in"),
        (60 * INCH, "in", "5 ft"),
        (Fraction("59.75") * INCH, "in", "59 3/4 in"),
        (48 * INCH, "in", "48 in"),
        (Fraction("107.99") * INCH, "in", "9 ft"),
        (Fraction(2743), "cm", "2.74 m"),
        (Fraction(2000), "mm", "2.00 m"),
        (Fraction(995), "cm", "99.5 cm"),
        (Fraction(995), "mm", "995 mm"),
        (Fraction(-30), "cm", "-3 cm"),
    ],
)
def test_a_leaders_length_is_said_as_people_say_it(
    mm: Fraction, unit: ShownUnit, words: str
) -> None:
    assert long_length(mm, unit) == words


@given(st.integers(16, 2000), st.sampled_from(["in", "cm", "mm"]))
def test_what_is_spelled_is_read_as_the_nearest_mark(marks: int, unit: ShownUnit) -> None:
    mm = marks * (INCH / 16 if unit == "in" else Fraction(1))
    assert parse_length(length(mm, unit)).mm == mm


@pytest.mark.parametrize(
    ("written", "unit", "shown"),
    [
        ("0.023 in", "cm", "0.58 mm"),
        ("0.023 in", "mm", "0.58 mm"),
        ("23 thou", "cm", "0.58 mm"),
        ("1/50 in", "cm", "0.51 mm"),  # 0.508
        ("0.020 in", "cm", "0.51 mm"),
        ("1/10 in", "cm", "2.54 mm"),
        ("0.15 mm", "in", "0.006 in"),  # 0.0059
        ("0.58 mm", "in", "0.023 in"),
        ("0.5 mm", "in", "0.020 in"),
        # What is in the right system stays, digit for digit.
        ("0.0125 in", "in", "0.0125 in"),
        ("23 thou", "in", "23 thou"),
        ("0.5 mm", "cm", "0.5 mm"),
        ("0.285 mm", "mm", "0.285 mm"),
        # An X size is what the spool says anywhere.
        ("4X", "in", "4X"),
        ("4X", "cm", "4X"),
        ("2.5X", "mm", "2.5X"),
    ],
)
def test_a_diameter_is_shown_as_spools_of_that_system_are_marked(
    written: str, unit: ShownUnit, shown: str
) -> None:
    assert diameter_in(parse_diameter(written), unit) == shown


@pytest.mark.parametrize(
    ("written", "unit", "shown"),
    [
        ("25 lb", "in", "25 lb"),
        ("25 lb", "cm", "11.3 kg"),  # 0.45359237 kg each: 11.34
        ("22 lb", "mm", "10 kg"),  # 9.979
        ("5 kg", "in", "11 lb"),  # 11.02
        ("2.9 kg", "cm", "2.9 kg"),
        ("1/2 kg", "in", "1.1 lb"),
    ],
)
def test_a_strength_is_shown_in_pounds_or_kilograms(
    written: str, unit: ShownUnit, shown: str
) -> None:
    assert strength_in(parse_strength(written), unit) == shown


@pytest.mark.parametrize(
    ("written", "unit", "shown"),
    [("9 ft", "in", "9 ft"), ("9 ft", "cm", "2.74 m"), ("275 cm", "mm", "275 cm")],
)
def test_a_length_of_the_other_system_is_shown_as_people_say_it(
    written: str, unit: ShownUnit, shown: str
) -> None:
    assert length_in(parse_length(written), unit) == shown


@given(st.integers(2, 118))
def test_every_thousandth_of_an_inch_comes_back_from_mm(thou: int) -> None:
    there = diameter_in(parse_diameter(f"{thou} thou"), "cm")
    assert diameter_in(parse_diameter(there), "in") == f"{thou / 1000:.3f} in"


@pytest.mark.parametrize(
    ("inches", "says"), [(285, "8 yd"), (684, "19 yd"), (22, "0.7 yd"), (720, "20 yd")]
)
def test_line_to_buy_is_never_less_than_is_needed(inches: int, says: str) -> None:
    assert line_to_buy(inches * INCH, "in") == says
