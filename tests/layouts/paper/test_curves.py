"""Round corners are round, and outlines have the size of their box."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.paper.curves import circle, corner_arcs, rounded
from tagend.layouts.paper.face import Step, rectangle


def on_curves(steps: tuple[Step, ...]) -> list[tuple[float, float]]:
    """Return places along all curves of an outline."""
    at, found = (0.0, 0.0), []
    for step in steps:
        if step[0] == "curve":
            points = [at, step[1:3], step[3:5], step[5:7]]
            for t in (0, 0.2, 0.5, 0.8, 1):
                weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3]
                found.append(
                    (
                        sum(w * p[0] for w, p in zip(weights, points, strict=True)),
                        sum(w * p[1] for w, p in zip(weights, points, strict=True)),
                    )
                )
        if len(step) > 1:
            at = (step[-2], step[-1])
    return found


def test_a_circle_is_one() -> None:
    places = on_curves(circle(50, 40, 20))
    assert len(places) == 4 * 5
    for x, y in places:
        assert math.hypot(x - 50, y - 40) == pytest.approx(20, rel=3e-4)


def test_without_a_radius_an_outline_is_a_rectangle() -> None:
    assert rounded(1, 2, 30, 40, 0) == rectangle(1, 2, 30, 40)


@given(
    x=st.floats(0, 100), y=st.floats(0, 100), side=st.floats(20, 100), share=st.floats(0.01, 0.5)
)
def test_an_outline_touches_all_sides_of_its_box(
    x: float, y: float, side: float, share: float
) -> None:
    steps = rounded(x, y, 2 * side, side, share * side)
    xs = [p for step in steps if len(step) > 1 for p in step[1::2]]
    ys = [p for step in steps if len(step) > 1 for p in step[2::2]]
    assert (min(xs), max(xs)) == pytest.approx((x, x + 2 * side))
    assert (min(ys), max(ys)) == pytest.approx((y, y + side))


def test_the_arcs_of_a_box_are_those_of_its_outline() -> None:
    arcs = {(round(x, 6), round(y, 6)) for x, y in on_curves(corner_arcs(5, 6, 70, 50, 8))}
    outline = {(round(x, 6), round(y, 6)) for x, y in on_curves(rounded(5, 6, 70, 50, 8))}
    assert arcs == outline
