import pytest
from hypothesis import given

from tagend.cards.base.units import (
    DIAMETER_MM,
    LENGTH_MM,
    STRENGTH_KG,
    Diameter,
    Length,
    Span,
    Strength,
    parse_length,
)
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.quantity_code import (
    read_diameter,
    read_length,
    read_span,
    read_strength,
    read_units,
    write_quantity,
    write_span,
)
from tagend.layouts.base.faults import Refused
from tests.strategies import diameters, lengths, spans, strengths


def cursor(text: str) -> Cursor:
    return Cursor(text, range(1, len(text) + 2), "section 2")


@given(lengths)
def test_every_length_comes_back_whatever_unit_is_silent(length: Length) -> None:
    for unit in LENGTH_MM:
        assert read_length(cursor(write_quantity(length, unit)), unit) == length


@given(spans)
def test_every_range_comes_back_whatever_unit_is_silent(span: Span) -> None:
    for unit in LENGTH_MM:
        assert read_span(cursor(write_span(span, unit)), unit) == span


@given(diameters)
def test_every_diameter_comes_back_whatever_unit_is_silent(diameter: Diameter) -> None:
    for unit in DIAMETER_MM:
        assert read_diameter(cursor(write_quantity(diameter, unit)), unit) == diameter


@given(strengths)
def test_every_strength_comes_back_whatever_unit_is_silent(strength: Strength) -> None:
    for unit in STRENGTH_KG:
        assert read_strength(cursor(write_quantity(strength, unit)), unit) == strength


@pytest.mark.parametrize(
    ("length", "written"),
    [
        ("30 in", "30"),
        ("0.50 in", ".50"),
        ("00.5 in", "00.5"),
        ("7 1/2 in", "7+1/2"),
        ("3/4 in", "3/4"),
        ("7 1/2 ft", "7+1/2FT"),
        ("7' 6\"", "7FT6IN"),
        ("7 ft 0.50 in", "7FT.50IN"),
        ("0 ft 6 in", "0FT6IN"),
        ("76 cm", "76CM"),
    ],
)
def test_digits_stay_and_inches_are_silent(length: str, written: str) -> None:
    assert write_quantity(parse_length(length), "in") == written


def test_a_length_read_is_spelled_plainly() -> None:
    assert str(read_span(cursor("7+1/2-8FT"), "in")) == "7 1/2 in to 8 ft"


def test_units_are_read_as_a_set() -> None:
    assert read_units(cursor("CM/MM/KG")) == ("cm", "mm", "kg")
    assert read_units(cursor("CM/MM")) is None
    assert read_units(cursor("MM/CM/KG")) is None


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("X", "section 2, character 1: 'X' is no length, such as 30 or 7FT6IN"),
        ("0", "section 2, character 1: '0 in' is no likely length"),
        ("1/0", "section 2, character 1: '1/0 in' divides by nought"),
        ("12345678", "section 2, character 1: '12345678 in' has too many digits"),
        ("30-30", "section 2, character 6: 30 in-30 in does not grow"),
    ],
)
def test_what_is_no_length_is_pointed_at(written: str, said: str) -> None:
    with pytest.raises(Refused) as refusal:
        read_span(cursor(written), "in")
    assert str(refusal.value).startswith(said)
