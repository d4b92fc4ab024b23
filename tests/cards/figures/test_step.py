"""The frames of a knot: each is the knot so far, and what hangs free crosses nothing."""

from itertools import pairwise
from math import cos, dist, sin

from tagend.cards.figures.frames import Frame, knot_frames
from tagend.cards.figures.step import Stage, after
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Knot
from tests.cards.figures.stages import KNOTS, every_figure, stage
from tests.cards.figures.topology import Point, crossings

Spot = tuple[float, float, float, float]


def met(strands: tuple[Course, ...]) -> list[Spot]:
    """Return where strands cross, and the depths of what passes over and under, from the left."""
    found = crossings([strand.points for strand in strands])
    return sorted(
        (round(c.over.x, 4), round(c.over.y, 4), round(c.over.z, 4), round(c.under.z, 4))
        for c in found
    )


def laid(knot: Knot, thick: int, thin: int) -> list[Frame]:
    return list(knot_frames(knot, thick, thin)[:-1])


def known(frame: Frame) -> set[Point]:
    return {point for strand in frame.strands for point in strand.points}


def same_curves(one: Frame, other: Frame) -> bool:
    """Whether two frames are drawn along the same curves, as all steps of one way of laying are."""
    return len(known(one) & known(other)) > 0.5 * len(known(one))


@every_figure
def test_a_frame_has_the_crossings_of_the_next_that_it_has_come_to(
    knot: Knot, thick: int, thin: int
) -> None:
    for one, other in pairwise(laid(knot, thick, thin)):
        if same_curves(one, other):
            there = met(other.strands)
            assert all(crossing in there for crossing in met(one.strands))


@every_figure
def test_what_a_frame_adds_lies_beyond_what_was_there(knot: Knot, thick: int, thin: int) -> None:
    for one, other in pairwise(laid(knot, thick, thin)):
        if not same_curves(one, other):
            continue
        old = known(one)
        curves = [strand.points for strand in other.strands]
        before = set(met(one.strands))
        for c in crossings(curves):
            spot = tuple(round(v, 4) for v in (c.over.x, c.over.y, c.over.z, c.under.z))
            ends = [curves[p.curve][int(p.at) + step] for p in (c.over, c.under) for step in (0, 1)]
            assert (spot in before) == all(point in old for point in ends)


@every_figure
def test_something_moves_in_every_step_but_a_bight_that_is_turned(
    knot: Knot, thick: int, thin: int
) -> None:
    still = [frame for frame in laid(knot, thick, thin) if not frame.arrows]
    assert len(still) == (1 if knot.name == "twisted-loop joint" else 0)


@every_figure
def test_an_arrow_stands_at_the_end_of_a_strand_and_on_none(
    knot: Knot, thick: int, thin: int
) -> None:
    for frame in knot_frames(knot, thick, thin):
        for arrow in frame.arrows:
            tip = arrow.x + 2.3 * cos(arrow.angle), arrow.y + 2.3 * sin(arrow.angle)
            points = [point for strand in frame.strands for point in strand.points]
            assert min(dist(tip, point[:2]) for point in points) > 0.4


def test_turns_that_a_frame_tells_are_those_it_draws() -> None:
    for thick, thin in ((3, 5), (4, 6)):
        counts = [frame.count for frame in knot_frames(KNOTS.find("blood"), thick, thin)]
        assert [(c.number, c.side) if c else None for c in counts] == [
            (thick, "heavy"),
            None,
            (thin, "light"),
            None,
        ]


def test_a_strand_that_is_not_there_yet_is_left_out() -> None:
    strands = stage("ring joint", 0, 4)
    there, _ = after(strands, Stage((None, ())))
    assert len(there) == len(strands) - 1


def test_a_free_end_keeps_clear_of_what_lies_in_its_way() -> None:
    along = Course(tuple((x / 4, 0.0, 0.0) for x in range(40)), "solid")
    wall = Course(tuple((7.0, y / 4, 0.0) for y in range(-8, 9)), "solid")
    (cut, _), (arrow,) = after((along, wall), Stage((((5.0, 0.0, 0.0),),), moves=(0,)))
    assert min(dist(a[:2], b[:2]) for a in cut.points for b in wall.points) >= 0.9
    assert arrow.x < 7.0


def test_a_folded_end_stays_one_strand() -> None:
    (strand, _) = knot_frames(KNOTS.find("palomar"), 0, 0)[0].strands
    assert all(dist(a, b) < 0.6 for a, b in pairwise(strand.points))
