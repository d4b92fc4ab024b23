"""How much line lies in a knot: against the calculus and against sums made by hand."""

import math

import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.allowance import helix_mm, wraps_mm


@pytest.mark.parametrize(
    ("turns", "radius", "height"), [(5, 0.33, 1.65), (7, 0.2, 0.9), (1, 3.0, 40.0), (20, 0.25, 5.0)]
)
def test_the_formula_is_the_length_of_the_curve(turns: int, radius: float, height: float) -> None:
    # OpenStax, Calculus Volume 3, arc length and curvature: s = sqrt((2 pi N R)^2 + h^2), with h
    # the whole height. Here the curve itself is walked in 20 000 short chords.
    steps = 20_000

    def point(step: int) -> tuple[float, float, float]:
        angle = 2 * math.pi * turns * step / steps
        return radius * math.cos(angle), radius * math.sin(angle), height * step / steps

    walked = sum(math.dist(point(step), point(step + 1)) for step in range(steps))
    assert helix_mm(turns, radius, height) == pytest.approx(walked, rel=1e-5)


# One side of a blood knot, in mm to a tenth, worked out by hand from the formula above:
# close turns round one core strand, pi (d1 + d2) a turn; round two side by side, 2 d2 more.
BURIED = [
    # wound, core, turns, one core, two cores
    ("0.005 in", "0.006 in", 7, 6.2, 8.3),
    ("0.006 in", "0.007 in", 7, 7.3, 9.8),
    ("0.009 in", "0.011 in", 6, 9.7, 13.0),
    ("0.011 in", "0.013 in", 5, 9.7, 13.0),
    ("0.013 in", "0.013 in", 5, 10.5, 13.8),
    ("0.015 in", "0.017 in", 5, 12.9, 17.2),
    ("0.017 in", "0.015 in", 5, 12.9, 16.7),
    ("0.020 in", "0.020 in", 4, 12.9, 17.0),
    ("0.025 in", "0.025 in", 4, 16.2, 21.2),
    ("0.024 in", "0.020 in", 3, 10.7, 13.7),
]


@pytest.mark.parametrize(("wound", "core", "turns", "one_core", "two_cores"), BURIED)
def test_the_line_buried_in_a_blood_knot(
    wound: str, core: str, turns: int, one_core: float, two_cores: float
) -> None:
    sizes = parse_diameter(wound).mm, parse_diameter(core).mm
    # A tenth's half for the table's rounding, and our hundredth up.
    assert float(wraps_mm(turns, *sizes, 1)) == pytest.approx(one_core, abs=0.06)
    assert float(wraps_mm(turns, *sizes, 2)) == pytest.approx(two_cores, abs=0.06)
