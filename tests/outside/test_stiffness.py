"""Bending stiffness: EI = E x pi x d^4 / 64 for a solid round strand.

Any mechanics of materials text: the second moment of area of a circle is pi d^4 / 64.
"""

import math
from itertools import combinations

import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.passing import passing
from tests.written import leader, recipe, section

# EI in N mm2 by diameter in inches and E in GPa, worked out by hand.
TABLE = {
    1: {21: 3.974, 17: 1.706, 13: 0.584, 11: 0.299, 8: 0.084, 6: 0.026, 5: 0.013},
    2: {21: 7.947, 17: 3.413, 13: 1.167, 11: 0.598, 8: 0.167, 6: 0.053, 5: 0.026},
    3: {21: 11.92, 17: 5.119, 13: 1.751, 11: 0.897, 8: 0.251, 6: 0.079, 5: 0.038},
    4: {21: 15.89, 17: 6.826, 13: 2.334, 11: 1.197, 8: 0.335, 6: 0.106, 5: 0.051},
}

# Steps of the usual tapers with the fourth power of their ratio, to two places, by hand.
POWERS = [
    (21, 19, 1.49),
    (19, 17, 1.56),
    (17, 15, 1.65),
    (15, 13, 1.77),
    (13, 11, 1.95),
    (11, 9, 2.23),
    (9, 7, 2.73),
    (7, 5, 3.84),
    (23, 20, 1.75),
    (20, 17, 1.92),
    (17, 13, 2.92),
    (20, 13, 5.60),
]


def ratios(upper: int, lower: int, *materials: str) -> tuple[float, float]:
    """Return how stiff a strand is over the next, least and most, in thousandths of an inch."""
    above, below = materials or ("nylon", "nylon")
    written = recipe(
        section("20 in", f"{upper} thou", above), section("20 in", f"{lower} thou", below)
    )
    stiffness = passing(leader(written).joints[0].meeting).stiffness
    assert stiffness is not None
    return stiffness.low, stiffness.high


def ratio(upper: int, lower: int) -> float:
    """Return the stiffness of a strand over that of the next, of one material."""
    least, most = ratios(upper, lower)
    assert least == most
    return least


@pytest.mark.parametrize("gigapascal", TABLE)
def test_the_table_is_the_formula(gigapascal: int) -> None:
    for thou, stiffness in TABLE[gigapascal].items():
        d = float(parse_diameter(f"{thou} thou").mm)
        assert gigapascal * 1000 * math.pi * d**4 / 64 == pytest.approx(stiffness, abs=0.005)


@pytest.mark.parametrize(("upper", "lower"), list(combinations(TABLE[4], 2)))
def test_the_audits_ratio_is_the_ratio_of_the_table(upper: int, lower: int) -> None:
    # The table gives the finest strands two figures only: 0.051 may be 0.0505 to 0.0515.
    expected = TABLE[4][upper] / TABLE[4][lower]
    assert ratio(upper, lower) == pytest.approx(expected, rel=0.012)


@pytest.mark.parametrize(("upper", "lower", "power"), POWERS)
def test_equal_steps_grow_steeper_as_strands_grow_finer(
    upper: int, lower: int, power: float
) -> None:
    assert ratio(upper, lower) == pytest.approx(power, abs=0.005)


def test_between_materials_the_moduli_count() -> None:
    # Nylon moulded 2 to 3.5 GPa (diracdelta.co.uk); PVDF 2.1 GPa undrawn (open materials data set
    # MorePET/mat, pull 212), 4.0 GPa strongly drawn (abstract).
    assert ratios(10, 10, "nylon", "fluorocarbon") == pytest.approx((2.0 / 4.0, 3.5 / 2.1))
