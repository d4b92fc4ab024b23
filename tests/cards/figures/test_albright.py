"""The Albright and the nail knot, held against their steps in knots.toml."""

from math import hypot

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import (
    Curve,
    Point,
    alexander,
    closed,
    crossings,
    linking,
    turns,
)


def at_the_fold(thick: Curve, thin: Curve) -> list[bool]:
    """Return whether the thin strand passes over the fold, standing part and tag."""
    fold = max(x for x, *_ in thick)
    return [
        crossing.over.curve == 1
        for crossing in crossings([thick, thin])
        if crossing.over.x > fold - 0.6
    ]


def tag_over_the_fold(thin: Curve, fold: float) -> list[Point]:
    """Return the thin strand with its tag brought out on the other side of the bight."""
    last = max(place for place, point in enumerate(thin) if point[0] < fold - 1.2)
    return [*thin[:last], *((x, y, 1.5) for x, y, _ in thin[last:])]


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize("count", [10, 12])
def test_thin_strand_winds_its_turns_towards_the_fold(number: int, count: int) -> None:
    _, thin = curves(stage("albright", number, 0, count))
    start = min(range(len(thin)), key=lambda place: thin[place][0])
    outside = [place for place, (_, y, z) in enumerate(thin) if hypot(y, z) > 1.5]
    # up behind the legs, the turns, and over once more into the bight: less than half a turn
    assert turns(thin[start : outside[-1]]) == pytest.approx(count + 0.4, abs=0.15)
    assert thin[outside[0]][0] < thin[outside[-1]][0]


@pytest.mark.parametrize("number", [0, 1])
def test_tag_leaves_the_bight_on_the_side_where_it_went_in(number: int) -> None:
    thick, thin = curves(stage("albright", number, 0, 10))
    assert at_the_fold(thick, thin) == [False, False]


@pytest.mark.parametrize("number", [0, 1])
def test_out_on_the_other_side_it_would_fail(number: int) -> None:
    thick, thin = curves(stage("albright", number, 0, 10))
    bight = closed(thick)
    assert abs(linking(bight, closed(thin, far=75))) == 1
    wrong = tag_over_the_fold(thin, max(x for x, *_ in thick))
    assert linking(bight, closed(wrong, far=75)) == 0  # the bight would slip out


@pytest.mark.parametrize("count", [10, 12])
def test_albright_drawn_up_is_the_knot_that_was_laid_up(count: int) -> None:
    for t in (-1, 2):
        kinds = []
        for number in (0, 1):
            thick, thin = curves(stage("albright", number, 0, count))
            kinds.append(
                (alexander(closed(thick, thin), t=t), alexander(closed(thick, thin[::-1]), t=t))
            )
        assert kinds[0] == kinds[1]


@pytest.mark.parametrize("number", [0, 1])
def test_albright_ends_lie_where_the_steps_leave_them(number: int) -> None:
    thick, thin = stage("albright", number, 0, 10)
    fold = max(x for x, *_ in thick.points)
    assert thick.points[0][0] < thick.points[-1][0] < 0  # both legs to the left, the tag shorter
    assert thin.points[0][0] > thin.points[-1][0] > fold  # both to the right
    assert thick.last_cut
    assert thin.last_cut
