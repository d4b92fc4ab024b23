"""The clinches, held against their steps in knots.toml."""

from math import dist

import pytest

from tagend.cards.figures.strand import Course
from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, alexander, closed, passes, turns

CLINCHES = ["clinch", "improved clinch"]


def wire(eye: Course) -> Curve:
    """Return the eye as a ring, without its shank."""
    ring = [point for point in eye.points if dist(point, (0, 0, 0)) < 1.7]
    return [*ring, ring[0]]


@pytest.mark.parametrize(("name", "half"), [("clinch", 0.5), ("improved clinch", 0.0)])
@pytest.mark.parametrize("count", [3, 5])
def test_tag_winds_its_turns_away_from_the_eye(name: str, half: float, count: int) -> None:
    line, _ = curves(stage(name, 0, count))
    bend = max(range(len(line)), key=lambda place: line[place][0])  # in the eye
    far = min(range(bend, len(line)), key=lambda place: line[place][0])
    wound = [point for point in line[bend:far] if point[0] < -4.8]
    # the clinch goes half round once more; right-handed, seen as it goes away from the eye
    assert -turns(wound) == pytest.approx(count + half, abs=0.2)


@pytest.mark.parametrize("count", [3, 5])
def test_clinch_passes_the_tag_through_the_loop_by_the_eye(count: int) -> None:
    line, _ = passes(curves(stage("clinch", 0, count)), "LE")
    standing = ["UL", "OL"] * count + ["UL", "OL"]  # under the turns, the last half; over the tag
    eye = ["OE", "UE"]
    out = ["UL"] + ["OL", "UL"] * count + ["OL"]  # under the tag; the turns and a half
    tag = ["UL", "OL"]  # behind the standing part, and out in front of the own: in between
    assert line.split() == standing + eye + out + tag


@pytest.mark.parametrize("count", [3, 5])
def test_improved_clinch_also_passes_it_through_the_big_loop(count: int) -> None:
    line, _ = passes(curves(stage("improved clinch", 0, count)), "LE")
    standing = ["OL", "UL"] * count
    eye = ["OE", "UE"]
    out = ["UL", "OL"] + ["OL", "UL"] * count  # under the tag and over it as it comes back
    # the way back under the tag; the tag over the own strand into the small loop, back under it,
    # and over the way back: through the big loop
    tag = ["UL", "OL", "UL", "OL"]
    assert line.split() == standing + eye + out + tag


@pytest.mark.parametrize("name", CLINCHES)
@pytest.mark.parametrize("number", [0, 1])
def test_tag_comes_out_between_the_turns_and_the_eye(name: str, number: int) -> None:
    line, _ = curves(stage(name, number, 5))
    x, y, _ = line[-1]
    assert -5.4 < x < -1.5
    assert abs(y) > 2.5


@pytest.mark.parametrize("name", CLINCHES)
@pytest.mark.parametrize("count", [3, 5])
def test_drawn_up_it_is_the_knot_that_was_laid_up(name: str, count: int) -> None:
    for t in (-1, 2, 3):
        laid, drawn = (
            alexander(closed(line.points), wire(eye), t=t)
            for line, eye in (stage(name, number, count) for number in (0, 1))
        )
        assert laid == drawn


@pytest.mark.parametrize("count", [3, 5])
def test_big_loop_makes_another_knot_than_the_small_one_alone(count: int) -> None:
    plain, improved = (stage(name, 0, count) for name in CLINCHES)
    kinds = [alexander(closed(line.points), wire(eye)) for line, eye in (plain, improved)]
    assert kinds[0] != kinds[1]


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize(("name", "apart"), [("ring joint", 0.6), ("swivel", 3.3)])
def test_ring_and_swivel_have_a_clinch_to_either_side(name: str, apart: float, number: int) -> None:
    left, right, *_ = stage(name, number, 3, 5)
    for strand, count, side in ((left, 3, 1), (right, 5, -1)):
        clinch, _ = stage("clinch", number, count)
        moved = [(side * x + apart, side * y, z) for x, y, z in strand.points]
        assert all(dist(p, q) < 1e-6 for p, q in zip(moved, clinch.points, strict=True))
    assert (left.look, right.look) == ("outline", "solid")


@pytest.mark.parametrize("number", [0, 1])
def test_each_clinch_holds_its_own_eye_of_the_swivel(number: int) -> None:
    left, right, *metal = passes(curves(stage("swivel", number, 3, 5)), "LReEbbb")
    assert {passed for passed in left.split() if passed[1] != "L"} == {"Oe", "Ue"}
    assert {passed for passed in right.split() if passed[1] != "R"} == {"OE", "UE"}
    assert not any(passed[1] in "LR" for bar in metal[2:] for passed in bar.split())
