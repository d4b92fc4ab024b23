"""Quantities against pint, a units registry by other hands, set to exact fractions."""

from fractions import Fraction

import pint
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.shown_lengths import ShownUnit, diameter_in
from tagend.cards.base.units import Diameter, Length, Strength
from tests.strategies import diameters, lengths, strengths

REGISTRY: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)


def reference(plain: str, unit: str) -> Fraction:
    """Return the sum of `7 1/2 ft 3 in` in a unit: pint's parser does not add what stands so."""
    total = Fraction(0)
    number = Fraction(0)
    for word in plain.split():
        if word[0].isdigit():
            number += Fraction(word)
        else:
            total += REGISTRY.Quantity(number, word).to(unit).magnitude
            number = Fraction(0)
    return total


@given(lengths)
def test_a_length_is_what_pint_makes_of_it(length: Length) -> None:
    assert length.mm == reference(length.plain, "mm")


@given(diameters)
def test_a_diameter_is_what_pint_makes_of_it(diameter: Diameter) -> None:
    if diameter.unit != "X":  # which pint does not know
        assert diameter.mm == reference(diameter.plain, "mm")


@given(diameters, st.sampled_from(["in", "cm", "mm"]))
def test_a_diameter_in_the_other_system_is_what_pint_makes_of_it_to_the_last_digit(
    diameter: Diameter, shown: ShownUnit
) -> None:
    if diameter.unit != "X":
        unit, half = ("in", Fraction(1, 2000)) if shown == "in" else ("mm", Fraction(1, 200))
        told = reference(diameter_in(diameter, shown), unit)
        assert abs(told - reference(diameter.plain, unit)) <= half


@given(strengths)
def test_a_strength_is_what_pint_makes_of_it(strength: Strength) -> None:
    assert strength.kg == reference(strength.plain, "kg")
