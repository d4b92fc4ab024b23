"""The nail knot and the needle knot, held against their steps in knots.toml."""

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, alexander, closed, turns

both = pytest.mark.parametrize("name", ["nail knot", "needle knot"])
stages = pytest.mark.parametrize("number", [0, 1])


@both
@stages
@pytest.mark.parametrize("count", [5, 6, 8])
def test_tail_winds_its_turns_towards_the_tip_of_the_line(
    name: str, number: int, count: int
) -> None:
    line, butt, *_ = curves(stage(name, number, count))
    start = min(range(len(butt) * 2 // 3), key=lambda place: butt[place][0])
    end = max(range(len(butt) // 2, len(butt)), key=lambda place: butt[place][0])
    # from its turning point on, half a turn more before the tag goes back under
    assert abs(turns(butt[start:end])) == pytest.approx(count + 0.4, abs=0.35)
    assert butt[start][0] < butt[end][0] < line[-1][0]


@both
@stages
@pytest.mark.parametrize("count", [5, 6])
def test_knot_is_held_by_its_own_turns(name: str, number: int, count: int) -> None:
    # The tag put back under n turns round its own standing part is an n-fold overhand.
    _, butt, *_ = curves(stage(name, number, count))
    assert alexander(closed(butt)) == 2 * count + 1


@pytest.mark.parametrize("count", [5, 6])
def test_nail_knot_drawn_up_is_the_knot_that_was_laid_up(count: int) -> None:
    kinds = [
        alexander(closed(line, far=75), closed(butt), t=2)
        for line, butt, *_ in (curves(stage("nail knot", number, count)) for number in (0, 1))
    ]
    assert kinds[0] == kinds[1]


@both
@stages
def test_tag_comes_out_at_the_other_end_of_the_turns(name: str, number: int) -> None:
    line, butt, *_ = stage(name, number, 5)
    assert butt.points[0][0] > line.points[-1][0]  # the butt runs on to the leader
    assert butt.points[-1][0] < 0
    assert line.last_cut  # the tip of the line
    assert line.width > butt.width


@both
def test_tag_goes_through_a_tube_under_the_turns(name: str) -> None:
    _, butt, tube = stage(name, 0, 5)
    (left, high, _), (right, *_) = tube.points[0], tube.points[-1]
    assert tube.width > butt.width
    assert butt.points[-1][0] < left < 0  # where the tube is drawn out
    held = [p for p in butt.points[-60:] if left < p[0] < right]
    assert all(abs(y - high) < 1e-9 and abs(z) < 0.1 for _, y, z in held[-40:])
    over = [z for x, y, z in butt.points if abs(y - high) < 0.2 and z > 1 and left < x < right]
    assert over  # the turns lie before it
    assert len(stage(name, 1, 5)) == 2  # and drawn up, there is none


def inside(line: Curve, butt: Curve) -> list[bool]:
    """Return, for each point of the butt short of the line's tip, whether it is in the line."""
    return [y * y + z * z < 0.75**2 for x, y, z in butt if x < line[-1][0]]


@stages
@pytest.mark.parametrize("count", [3, 6])
def test_needle_knot_runs_in_the_core_from_the_end_to_a_hole_in_the_side(
    number: int, count: int
) -> None:
    line, butt, *_ = curves(stage("needle knot", number, count))
    run = inside(line, butt)
    hole = run.index(False)
    assert hole > 5
    assert not any(run[hole:])
    tip = len(butt) - len(run)
    assert all(abs(y) < 1e-9 for _, y, _ in butt[:tip])  # in line with the fly line
    x, _, z = butt[tip + hole]
    assert z > 0.5  # out towards the reader
    # the turns end by the hole, between it and the rest of the line
    assert 0 < x - max(x for x, y, _ in butt[tip + hole :] if y > 0.5) < 3.5


@pytest.mark.parametrize("number", [0, 1])
def test_nail_knot_leaves_the_core_alone(number: int) -> None:
    line, butt, *_ = curves(stage("nail knot", number, 5))
    assert not any(inside(line, butt))
