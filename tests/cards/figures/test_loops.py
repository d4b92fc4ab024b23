"""Loops: perfection loop, non-slip loop and loop to loop, held against their steps."""

from itertools import pairwise

import pytest

from tagend.cards.figures.frames import knot_frames
from tests.cards.figures.stages import KNOTS, curves, stage
from tests.cards.figures.topology import (
    alexander,
    closed,
    linking,
    passes,
    turns,
)


def overs(name: str, number: int, count: int = 0) -> str:
    """Return what a knot in one strand does along it: O and U."""
    line, *_ = passes(curves(stage(name, number, count)), "LE")
    return "".join(passed[0] for passed in line.split() if passed[1] == "L")


def test_perfection_loop_is_laid_up_as_its_steps_say() -> None:
    standing = "OO" + "U" + "U"  # before both ways behind it; behind the tag; behind loop two
    loop_one = "U" + "U" + "U"  # behind the tag, loop two and the standing part
    loop_two = "O" + "OO" + "O" + "U"  # before tag, standing part, tag, loop one; behind standing
    tag = "U" + "O" + "U" + "O"  # between the two: behind two's sides, before one's
    # loop two goes: right side over the tag, top over the standing part, left over the tag, down
    # over loop one, and behind the standing part
    assert overs("perfection loop", 0) == standing + loop_one + loop_two + tag


def test_perfection_loop_draws_loop_two_back_through_loop_one() -> None:
    standing = "OO" + "U" + "U"  # before both ways behind it; behind loop two's leg and the tag
    loop_one = "OO" + "U" + "UU"  # over both legs of loop two; behind tag, leg, standing part
    leg = "O" + "O" + "U"  # before the standing part, over the tag, back through loop one
    other_leg = "U" + "O" + "O" + "U"  # out of loop one, over tag and loop one, behind standing
    tag = "O" + "UU" + "O"  # before loop one's sides, behind both legs
    assert overs("perfection loop", 1) == standing + loop_one + leg + other_leg + tag


def test_perfection_loop_holds_its_loop_left_and_its_tag_square() -> None:
    (line,) = curves(stage("perfection loop", 1, 0))
    loop = min(line, key=lambda point: point[0])
    assert loop[0] < -12
    assert line[0][0] > 5
    (x1, y1, _), (x2, y2, _) = line[-5], line[-1]
    assert abs(x2 - x1) < 0.01  # the tag stands across the line
    assert y2 < y1


@pytest.mark.parametrize("number", [0, 1])
def test_perfection_loop_is_tied_without_an_end(number: int) -> None:
    # Loop two is a bight drawn through loop one, and the tag lies between without going through
    # either; so no knot is left in the strand when the loop is drawn back out.
    (line,) = curves(stage("perfection loop", number, 0))
    assert alexander(closed(line)) == 1
    assert alexander(closed(line), t=2) == 1


@pytest.mark.parametrize("count", [2, 4, 6])
def test_non_slip_loop_winds_and_goes_out_through_the_overhand_again(count: int) -> None:
    wound = "OU" * count
    standing = wound + "U" + "OOO" + "UUU"  # before and behind the three that go through it
    overhand = "O" + "U" + "O"  # before itself, up behind itself, out over its own side
    back = "O" + "U"  # in over the side and out behind: the way it came out
    again = "U" + "O"  # in behind and out over: the side where it came out
    assert overs("non-slip loop", 0, count) == standing + overhand + back + wound + again


@pytest.mark.parametrize(("number", "near"), [(0, -3.7), (1, -3.0)])
@pytest.mark.parametrize("count", [2, 4, 6])
def test_non_slip_loop_winds_its_turns_away_from_the_loop(
    number: int, near: float, count: int
) -> None:
    line, _ = curves(stage("non-slip loop", number, count))
    eye = max(range(len(line)), key=lambda place: line[place][0])
    far = min(range(eye, len(line)), key=lambda place: line[place][0])
    wound = [point for point in line[eye:far] if point[0] < near]
    assert -turns(wound) == pytest.approx(count, abs=0.3)


@pytest.mark.parametrize("count", [2, 4, 6])
def test_non_slip_loop_drawn_up_is_the_knot_that_was_laid_up(count: int) -> None:
    laid, drawn = (closed(stage("non-slip loop", number, count)[0].points) for number in (0, 1))
    for t in (-1, 2, 3):
        assert alexander(laid, t=t) == alexander(drawn, t=t)
    assert alexander(drawn) != 1  # an overhand alone would draw out: the tag holds it


@pytest.mark.parametrize("number", [0, 1])
def test_non_slip_loop_leaves_its_loop_open_and_its_tag_beside_it(number: int) -> None:
    line, eye = stage("non-slip loop", number, 4)
    far = min(x for x, *_ in eye.points)
    across = [y for x, y, _ in line.points if abs(x - far + 2.5) < 0.3]
    assert max(across) - min(across) > 2.5  # the loop's legs stand apart
    assert 0 < line.points[-1][0] < far - 2
    assert line.points[-1][1] < sum(across) / len(across)


def test_lower_loop_is_slipped_over_the_upper_one_before_its_piece_goes_through() -> None:
    upper, lower, *_ = curves(knot_frames(KNOTS.find("loop to loop"), 0, 0)[1].strands)
    met = [passed[0] for passed in passes([upper, lower], "UL")[1].split() if passed[1] == "U"]
    piece, ring = ["U", "O"], ["O", "O", "U", "U", "O", "O"]  # both go over the upper loop's side
    # under the upper loop's tip and out over its side; the ring's tip behind both of its legs
    assert met == [*piece, *ring]


@pytest.mark.parametrize("number", [0, 1])
def test_loops_seat_as_a_reef_knot(number: int) -> None:
    left, right, *_ = passes(curves(stage("loop to loop", number, 0)), "LRlr")
    # Each leg goes over the other's tip, under its leg, and its own tip over that leg again, on
    # both sides of the line alike: a reef. In a choke one loop's legs would run straight through.
    met = [passed[0] for passed in left.split() if passed[1] == "R"]
    assert met == ["O", "U", "O", "O", "U", "O"]
    met = [passed[0] for passed in right.split() if passed[1] == "L"]
    assert met == ["U", "O", "U", "U", "O", "U"]


@pytest.mark.parametrize("number", [0, 1])
def test_each_tip_goes_round_both_legs_of_the_other_loop(number: int) -> None:
    left, right, *_ = curves(stage("loop to loop", number, 0))
    tip = max(x for x, *_ in left)
    assert min(x for x, *_ in right) == pytest.approx(-tip)
    legs = [y for (x1, y, _), (x2, *_) in pairwise(right) if (x1 - tip) * (x2 - tip) <= 0]
    reach = [y for x, y, _ in left if x > tip - 0.5]
    assert len(legs) == 2
    assert min(reach) < min(legs) < max(legs) < max(reach)


@pytest.mark.parametrize("number", [0, 1])
def test_loops_come_apart_only_over_an_end(number: int) -> None:
    # The far end went through the other loop: the rings themselves are not links of a chain.
    left, right, *_ = curves(stage("loop to loop", number, 0))
    assert linking([*left, left[0]], [*right, right[0]]) == 0
