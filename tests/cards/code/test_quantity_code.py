import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import (
    DIAMETER_MM,
    STRENGTH_KG,
    Diameter,
    Length,
    Quantity,
    Span,
    Strength,
    parse_length,
)
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.quantity_code import (
    SILENT,
    Units,
    read_quantity,
    read_span,
    read_units,
    write_quantity,
    write_span,
)
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import LENGTH_MM
from tests.strategies import diameters, lengths, spans, strengths


def cursor(text: str) -> Cursor:
    return Cursor(text, range(1, len(text) + 2), "section 2")


EVERY_UNIT = {Length: LENGTH_MM, Diameter: DIAMETER_MM, Strength: STRENGTH_KG}


@given(st.one_of(lengths, diameters, strengths))
def test_every_quantity_comes_back_whatever_unit_is_silent(quantity: Quantity) -> None:
    kind = type(quantity)
    for unit in EVERY_UNIT[kind]:
        units = {**SILENT, kind: unit}
        assert read_quantity(cursor(write_quantity(quantity, units)), kind, units) == quantity


@given(spans)
def test_every_range_comes_back_whatever_unit_is_silent(span: Span) -> None:
    for unit in LENGTH_MM:
        units: Units = {**SILENT, Length: unit}
        assert read_span(cursor(write_span(span, units)), units) == span


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
    assert write_quantity(parse_length(length), SILENT) == written


def test_a_length_read_is_spelled_plainly() -> None:
    assert str(read_span(cursor("7+1/2-8FT"), SILENT)) == "7 1/2 in to 8 ft"


def test_units_are_read_as_a_set() -> None:
    assert read_units(cursor("CM/MM/KG")) == {Length: "cm", Diameter: "mm", Strength: "kg"}
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
        read_span(cursor(written), SILENT)
    assert str(refusal.value).startswith(said)
