"""The haywire twist, held against its steps in knots.toml."""

from itertools import pairwise

import pytest

from tagend.cards.figures.frames import knot_frames
from tests.cards.figures.stages import KNOTS, curves, stage
from tests.cards.figures.topology import Curve, Point, passes, turns

LOOP = -6.2  # where the twist begins


def halves(line: Curve) -> tuple[Curve, Curve]:
    """Return the standing part up to the eye, and the tag from there."""
    eye = max(range(len(line)), key=lambda place: line[place][0])
    return line[: eye + 1], line[eye:]


def within(part: Curve, low: float, high: float) -> list[Point]:
    return [point for point in part if low <= point[0] <= high]


@pytest.mark.parametrize("count", [4, 6])
def test_both_parts_twist_round_one_another(count: int) -> None:
    standing, tag = halves(curves(stage("haywire twist", 0, count))[0])
    twist = LOOP - count * 2.6, LOOP
    # one goes towards the eye, the other away from it: of one hand, and neither lies straight
    assert turns(within(standing, *twist)) == pytest.approx(count, abs=0.2)
    assert -turns(within(tag, *twist)) == pytest.approx(count, abs=0.2)


@pytest.mark.parametrize("count", [4, 6])
def test_tag_is_then_set_square(count: int) -> None:
    line, _ = knot_frames(KNOTS.find("haywire twist"), 0, count)[1].strands
    standing, tag = halves(line.points)
    (x1, y1, _), (x2, y2, _) = tag[-9], tag[-1]
    assert abs(x2 - x1) < 0.25 * (y2 - y1)
    assert x2 < LOOP - count * 2.6
    assert crossed(standing, tag) == 2 * count + 1  # at last over the standing part


@pytest.mark.parametrize("count", [4, 6])
def test_tag_is_laid_in_five_wraps_round_a_straight_standing_part(count: int) -> None:
    standing, tag = halves(curves(stage("haywire twist", 1, count))[0])
    far = LOOP - count * 2.6 - 0.5
    wraps = within(tag, -99, far)
    assert -turns(wraps) == pytest.approx(5, abs=0.3)
    assert min(x for x, *_ in wraps) == pytest.approx(far - 5 * 1.05, abs=0.3)  # they touch
    assert all(abs(y) < 0.35 for _, y, _ in within(standing, -99, far - 0.5))
    # two crossings a turn; the last wrap ends behind, before its second
    assert crossed(standing, tag) == 2 * count + 2 * 5


def crossed(standing: Curve, tag: Curve) -> int:
    """Return how often the tag crosses the standing part, by turns over it and under it."""
    _, met = passes([standing, tag], "ST")
    sides = [passed[0] for passed in met.split()]
    assert all(side != following for side, following in pairwise(sides))
    return len(sides)


def test_wire_leaves_an_open_loop_through_the_eye() -> None:
    line, eye = curves(stage("haywire twist", 0, 5))
    assert [passed for passed in passes([line, eye], "LE")[0].split() if passed[1] == "E"] == [
        "OE",
        "UE",
    ]
    legs = [y for x, y, _ in line if abs(x + 4) < 0.3]
    assert max(legs) - min(legs) > 2.5


def test_tag_is_broken_only_after_its_wraps_are_counted() -> None:
    *_, wrapped, finished = knot_frames(KNOTS.find("haywire twist"), 0, 5)
    assert wrapped.count is not None
    assert wrapped.count.number == 5
    assert len(wrapped.strands[0].points) > len(finished.strands[0].points)
