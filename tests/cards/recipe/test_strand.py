import pytest
from hypothesis import given
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_span, parse_strength
from tagend.cards.practice.materials import materials_with_own
from tagend.cards.recipe.recipe import Strand
from tagend.cards.recipe.strand import (
    StrandByStrength,
    parse_strand,
    parse_strand_by_strength,
)
from tagend.layouts.base.faults import Refused
from tests.strategies import diameters, materials, spans, strands, strengths
from tests.written import PRACTICE

HINT = 'write diameter and material, such as "0.028 in fluorocarbon 60 lb 12 in"'


@pytest.mark.parametrize(
    ("text", "diameter", "material", "strength", "length"),
    [
        ("0.028 in fluorocarbon 60 lb 12 in", "0.028 in", "fluorocarbon", "60 lb", "12 in"),
        ("4X nylon", "4X", "nylon", None, None),
        ("5 X  hard  nylon 3kg", "5X", "hard nylon", "3 kg", None),
        ("0.30mm fluoro 22 to 28 in", "0.30 mm", "fluorocarbon", None, "22 to 28 in"),
        ("1/50 in wire 7 1/2 lb 1 1/2 ft", "1/50 in", "wire", "7 1/2 lb", "1 1/2 ft"),
        ("20 thou Hard-Nylon 2' 6\"", "20 thou", "hard nylon", None, "2 ft 6 in"),
    ],
)
def test_a_strand_is_said_as_at_a_counter(
    text: str, diameter: str, material: str, strength: str | None, length: str | None
) -> None:
    assert parse_strand(text, PRACTICE) == Strand(
        diameter=parse_diameter(diameter),
        material=material,
        strength=parse_strength(strength) if strength else None,
        length=parse_span(length) if length else None,
        written=text,
    )


@pytest.mark.parametrize(
    ("text", "material", "length"),
    [
        ("30 lb fluorocarbon 12 in", "fluorocarbon", "12 in"),
        ("fluoro 30 lb 12 to 14 in", "fluorocarbon", "12 to 14 in"),
        ("30lb hard nylon", "hard nylon", None),
    ],
)
def test_a_strand_may_be_known_by_its_strength_alone(
    text: str, material: str, length: str | None
) -> None:
    found = parse_strand_by_strength(text, PRACTICE)
    span = parse_span(length) if length else None
    assert found == StrandByStrength(parse_strength("30 lb"), material, span)
    with pytest.raises(Refused, match="no diameter"):
        parse_strand(text, PRACTICE)


@pytest.mark.parametrize("text", ["4X nylon 5 lb", "4X nylon", "nylon 12 in", "30 lb", "12 in"])
def test_other_texts_are_no_strand_by_strength(text: str) -> None:
    assert parse_strand_by_strength(text, PRACTICE) is None


@given(diameters, materials, strengths, spans)
def test_any_diameter_material_strength_and_length_are_told_apart(
    diameter: object, material: str, strength: object, span: object
) -> None:
    strand = parse_strand(f" {diameter} {material} {strength} {span} ", PRACTICE)
    read = (strand.diameter, strand.material, strand.strength, strand.length)
    assert read == (diameter, material, strength, span)


@given(strands())
def test_a_strand_comes_back_from_its_text(strand: Strand) -> None:
    assert parse_strand(str(strand), PRACTICE) == strand


def test_an_own_material_may_have_figures_in_its_name() -> None:
    own = materials_with_own({"stiff 50": {"code": "S50", "kind": "nylon"}})
    strand = parse_strand("0.020 in stiff 50 20 lb", replace(PRACTICE, materials=own))
    assert (strand.material, strand.strength) == ("stiff 50", parse_strength("20 lb"))


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        (4, f"this is not a text in quotes; {HINT}"),
        ("  ", f"this text is empty; {HINT}"),
        ("4X " * 50, "this text has 150 characters; write at most 120"),
        ("0.028 in 60 lb 12 in", f"'0.028 in 60 lb 12 in' names no material; {HINT}"),
        ("4X nilon 6 lb", "no material is called 'nilon'; did you mean nylon?"),
        (
            "nylon 4X",
            "'nylon' cannot be read; "
            'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"',
        ),
        (
            "0.028 fluorocarbon",
            "'0.028' has no unit; "
            'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"',
        ),
    ],
)
def test_what_is_no_strand_is_refused(text: object, fault: str) -> None:
    with pytest.raises(Refused) as refusal:
        parse_strand(text, PRACTICE)
    assert str(refusal.value) == fault
