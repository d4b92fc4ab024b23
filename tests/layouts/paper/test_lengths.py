import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM
from tagend.layouts.paper.lengths import (
    fits,
    in_inches,
    in_mm,
    parse_length,
    parse_pair,
    size_in_mm,
)


@pytest.mark.parametrize(
    ("text", "points"),
    [
        ("1 in", 72.0),
        ("2 5/8 in", 189.0),  # 2.625 * 72
        ("2-5/8in", 189.0),
        ("1 1/3 in", 96.0),  # 4/3 * 72
        (".5 IN", 36.0),
        ("25.4 mm", 72.0),
        ("2.54cm", 72.0),
        ("0 mm", 0.0),
        ("½″", 36.0),
        ("1/2 ft", 432.0),
    ],
)
def test_length_is_read_in_points(text: str, points: float) -> None:
    assert parse_length(text) == pytest.approx(points, abs=1e-12)


@pytest.mark.parametrize("text", ["", "5", "mm", "-5 mm", "1/0 in", "1e3 mm", "5 mm x 2 mm", 5])
def test_what_is_no_length_is_refused(text: object) -> None:
    with pytest.raises(Refused):
        parse_length(text)


@pytest.mark.parametrize(
    "text", ["85.6x54mm", "85.6 x 54 mm", "85.6 × 54 mm", "85.6mm x 54mm", "8.56 X 5.4 cm"]
)
def test_pair_is_read_however_it_is_spaced(text: str) -> None:
    assert parse_pair(text) == pytest.approx((85.6 * MM, 54 * MM))


@pytest.mark.parametrize("text", ['3x5"', "3 × 5″", "3″ x 5″", "1/4 ft x 5 in", "3x5in"])
def test_a_pair_may_be_written_with_signs_and_in_feet(text: str) -> None:
    assert parse_pair(text) == (216, 360)


def test_each_length_of_a_pair_may_have_its_own_unit() -> None:
    assert parse_pair("3 in x 50.8 mm") == pytest.approx((216, 144))


@pytest.mark.parametrize("text", ["85x54", "85 mm", "85x54x3mm", "x54mm", "85mm x 54"])
def test_what_is_no_pair_is_refused(text: str) -> None:
    with pytest.raises(Refused):
        parse_pair(text)


@given(st.fractions(min_value=0, max_value=9999, max_denominator=64))
def test_inch_fractions_lose_nothing(inches: Fraction) -> None:
    whole, rest = divmod(inches, 1)
    text = f"{whole} {rest.numerator}/{rest.denominator} in"
    assert parse_length(text) == float(inches * 72)


def test_words_are_millimetres_without_trailing_noughts() -> None:
    assert in_mm(189) == "66.67 mm"  # 2 5/8 in = 66.675 mm, a float just below
    assert size_in_mm(85.6 * MM, 54 * MM) == "85.6 × 54 mm"


def test_sums_that_round_up_still_fit() -> None:
    assert fits(0.1 + 0.2, 0.3)
    assert not fits(10.1 * MM, 10 * MM)


@pytest.mark.parametrize(
    ("points", "words"),
    [
        (72, "1 in"),
        (2.625 * 72, "2 5/8 in"),
        (4.5, "1/16 in"),
        (72 / 64, "1/64 in"),
        (10 * MM, "0.394 in"),
        (2 / 3 * 72, "0.667 in"),  # no ruler has thirds
        (66.67 * MM, "2 5/8 in"),  # off by less than 0.01 mm
        (66.65 * MM, "2.624 in"),
        (0, "0 in"),
    ],
)
def test_inches_are_those_of_a_ruler_where_there_are_any(points: float, words: str) -> None:
    assert in_inches(points) == words


@given(st.floats(0, 3000))
def test_inches_and_the_length_differ_by_less_than_can_be_seen(points: float) -> None:
    assert parse_length(in_inches(points)) == pytest.approx(points, abs=0.0006 * 72)
