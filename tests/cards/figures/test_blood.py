"""Blood knots, held against their steps in knots.toml."""

from itertools import pairwise

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, Point, alexander, closed, passes, turns

TURNS = [(3, 3), (4, 6), (7, 9)]
LAID, DRAWN = 0, 1


def beyond(curve: Curve, x: float) -> list[Point]:
    """Return the part of a curve that lies to the right of x, up to its farthest point."""
    part = [point for point in curve if point[0] > x]
    far = max(range(len(part)), key=lambda place: part[place][0])
    return part[:far]


def turned(curve: Curve) -> list[Point]:
    return [(-x, -y, z) for x, y, z in curve]


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_each_tag_winds_its_turns_outwards_in_one_sense(thick: int, thin: int) -> None:
    a, b = curves(stage("blood", LAID, thick, thin))
    # the window between the sides is 3 thicknesses either way; what lies beyond are the turns
    assert turns(beyond(a, 3.0)) == pytest.approx(thick, abs=0.15)
    assert turns(beyond(turned(b), 3.0)) == pytest.approx(thin, abs=0.15)


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_tags_go_through_the_gap_from_opposite_sides(thick: int, thin: int) -> None:
    a, b = passes(curves(stage("blood", LAID, thick, thin)), "AB")
    # the core of the other's turns; both tags over it at the gap; own turns; the tag, from front
    assert a.split() == ["OB", "UB"] * thin + ["UB", "UA"] + ["OB", "UB"] * thick + ["OA", "UB"]
    # as the thick, but its tag goes under itself and over the other: from the back
    assert b.split() == ["OA", "UA"] * thick + ["OA", "OB"] + ["OA", "UA"] * thin + ["UB", "OA"]


@pytest.mark.parametrize("number", [LAID, DRAWN])
@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_tags_leave_the_middle_in_opposite_directions(number: int, thick: int, thin: int) -> None:
    a, b = curves(stage("blood", number, thick, thin))
    assert abs(a[-1][0]) < 2
    assert abs(b[-1][0]) < 2
    assert a[-1][1] < -2 < 2 < b[-1][1]


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_drawn_up_it_is_the_knot_that_was_laid_up(thick: int, thin: int) -> None:
    for t in (-1, 2):
        kinds = []
        for number in (LAID, DRAWN):
            a, b = curves(stage("blood", number, thick, thin))
            one = alexander(closed(a, b[::-1]), t=t)  # tag to tag, standing part to standing part
            kinds.append((one, alexander(closed(a), closed(b, far=75), t=t)))
        assert kinds[0] == kinds[1]


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_drawn_up_a_turn_shows_in_front_for_each_turn_wound(thick: int, thin: int) -> None:
    a, b = curves(stage("blood", DRAWN, thick, thin))
    for curve, count, side in ((a, thick, 1), (b, thin, -1)):
        outer = [p for p in curve if p[0] * side > 2.0 and abs(p[2]) < 2.3]
        ups = sum(p[1] < 0 <= q[1] and p[2] > 1 for p, q in pairwise(outer))
        downs = sum(p[1] >= 0 > q[1] and p[2] > 1 for p, q in pairwise(outer))
        assert max(ups, downs) == count


def test_doubled_blood_winds_its_fold_as_two() -> None:
    a, b = curves(stage("doubled blood", 0, 3, 5))
    assert turns(beyond(a, 4.0)) == pytest.approx(3, abs=0.2)
    fold = max(range(len(b)), key=lambda place: b[place][1])  # it stands up from the gap
    there, back = turned(b[:fold]), turned(b[: fold - 1 : -1])
    for leg in (there, back):
        assert turns(beyond(leg, 3.4)) == pytest.approx(5, abs=0.25)


def test_doubled_blood_leaves_three_ends_to_trim() -> None:
    a, b = stage("doubled blood", 0, 3, 5)
    assert a.last_cut
    assert b.last_cut  # the folded end
    assert not a.first_cut
    assert not b.first_cut
    top = max(b.points, key=lambda point: point[1])
    assert abs(top[0]) < 2.5  # the fold, out through the gap
    assert a.points[-1][1] < -3  # the thick tag, out on the other side
    assert b.points[-1][0] > b.points[len(b.points) // 2][0]  # the folded end lies with its line
