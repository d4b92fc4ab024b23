"""The yardsticks themselves, on curves whose knots are known."""

from math import cos, sin, tau

import pytest
from cfractions import Fraction

from tests.cards.figures.topology import (
    Point,
    alexander,
    closed,
    crossings,
    linking,
    passes,
    turns,
)


def torus_knot(p: int, q: int) -> list[Point]:
    steps = [tau * k / 400 for k in range(401)]
    return [
        ((2 + cos(q * t)) * cos(p * t), (2 + cos(q * t)) * sin(p * t), sin(q * t)) for t in steps
    ]


def circle(x: float, z: float = 0.0) -> list[Point]:
    angles = [tau * k / 60 for k in range(61)]
    return [(x + cos(angle), sin(angle), z) for angle in angles]


def upright(x: float) -> list[Point]:
    return [(x + cos(tau * k / 60), 0.0, sin(tau * k / 60)) for k in range(61)]


@pytest.mark.parametrize("n", [3, 5, 7, 9])
def test_torus_knots_have_the_determinants_of_the_tables(n: int) -> None:
    # 3_1, 5_1, 7_1, 9_1: the (2, n) torus knots, determinant n (D. Rolfsen, Knots and Links)
    assert alexander(torus_knot(2, n)) == n
    # their polynomial, (t^n + 1) / (t + 1), at 2
    assert alexander(torus_knot(2, n), t=2) == Fraction(2**n + 1, 3)


def test_figure_eight_knot_has_determinant_five() -> None:
    steps = [tau * k / 400 for k in range(401)]
    eight = [
        ((2 + cos(2 * t)) * cos(3 * t), (2 + cos(2 * t)) * sin(3 * t), sin(4 * t)) for t in steps
    ]
    assert alexander(eight) == 5
    assert alexander(eight, t=2) == 1  # t^2 - 3t + 1


def test_ring_has_determinant_one() -> None:
    assert alexander(circle(0)) == 1


def test_two_links_of_a_chain_are_linked_once() -> None:
    assert abs(linking(circle(0), upright(1))) == 1
    assert alexander(circle(0), upright(1)) == 2


def test_rings_apart_are_not_linked() -> None:
    assert linking(circle(0), upright(4)) == 0
    assert alexander(circle(0), upright(4)) == 0


def test_closing_a_straight_line_ties_nothing() -> None:
    assert alexander(closed([(0, 0, 0), (1, 0, 0), (2, 0, 0)])) == 1


def test_turns_are_counted_with_their_sense() -> None:
    helix = [(k / 10, cos(k / 10), sin(k / 10)) for k in range(101)]
    assert turns(helix) == pytest.approx(10 / tau)
    assert turns([(x, y, -z) for x, y, z in helix]) == pytest.approx(-10 / tau)


def test_passes_name_what_lies_above() -> None:
    flat = [(-1.5, 0.1, 0.0), (1.5, 0.1, 0.0)]
    wave = [(-1.0, -1.0, 1.0), (-0.5, 1.0, 1.0), (0.5, -1.0, -1.0), (1.0, 1.0, -1.0)]
    assert passes([flat, wave], "fw") == ["Uw Uw Ow", "Of Of Uf"]
    assert len(crossings([flat, wave])) == 3
