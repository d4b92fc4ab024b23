from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist, hypot

import pytest

from tagend.cards.figures.ink import EDGE, INK, frame, inked
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Path
from tests.cards.figures.stages import every_figure, knot_strands
from tests.cards.figures.topology import Crossing, crossings

UNIT = 2.2  # points a thickness
Place = tuple[float, float]
Part = tuple[Place, Place]


def straight(y: float, z: float, across: bool = False, **more: bool) -> Course:
    points = tuple((x / 4, y, z) for x in range(-20, 21))
    if across:
        points = tuple((y, x, z) for x, y, z in points)
    return Course(points, "outline", **more)


def traced(path: Path) -> Iterator[Part]:
    """Yield the short straight parts of what a pen goes along."""
    at: Place = (0.0, 0.0)
    for step in path.steps:
        match step:
            case ("move", x, y):
                at = (x, y)
            case ("line", x, y):
                yield at, (x, y)
                at = (x, y)
            case ("curve", x1, y1, x2, y2, x3, y3):
                whole = [_bezier(at, (x1, y1), (x2, y2), (x3, y3), k / 6) for k in range(7)]
                yield from pairwise(whole)
                at = (x3, y3)


def _bezier(a: Place, b: Place, c: Place, d: Place, t: float) -> Place:
    s = 1 - t
    x, y = (
        s**3 * p + 3 * s * s * t * q + 3 * s * t * t * r + t**3 * u
        for p, q, r, u in zip(a, b, c, d, strict=True)
    )
    return x, y


def away(place: Place, part: Part) -> float:
    """Return how far a place lies from a straight part."""
    (x1, y1), (x2, y2) = part
    long = (x2 - x1) ** 2 + (y2 - y1) ** 2 or 1.0
    share = ((place[0] - x1) * (x2 - x1) + (place[1] - y1) * (y2 - y1)) / long
    share = max(0.0, min(1.0, share))
    return dist(place, (x1 + share * (x2 - x1), y1 + share * (y2 - y1)))


def heading_on_top(black: Sequence[Sequence[Part]], place: Place) -> Place:
    """Return the direction of what is drawn last over a place, of all that is drawn in black."""
    for parts in reversed(black):
        near = min(parts, key=lambda part: away(place, part))
        if away(place, near) < 0.3 * UNIT:
            (x1, y1), (x2, y2) = near
            far = hypot(x2 - x1, y2 - y1)
            return (x2 - x1) / far, (y2 - y1) / far
    raise AssertionError("nothing is drawn there")


def along(crossing: Crossing, heading: Place) -> tuple[float, float]:
    """Return how nearly a heading, on the paper, is that of what passes over, and under."""
    over, under = crossing.over, crossing.under
    return (
        abs(over.dx * heading[0] - over.dy * heading[1]) / hypot(over.dx, over.dy),
        abs(under.dx * heading[0] - under.dy * heading[1]) / hypot(under.dx, under.dy),
    )


@every_figure
def test_at_every_crossing_the_upper_strand_is_drawn_last(
    knot: Knot, thick: int, thin: int
) -> None:
    for strands in knot_strands(knot, thick, thin):
        box = frame(strands)
        black = [list(traced(path)) for path in inked(strands, UNIT) if path.grey == 0.0]
        for crossing in crossings([strand.points for strand in strands]):
            if crossing.over.z - crossing.under.z < 0.5:  # wire that meets itself
                continue
            place = (crossing.over.x - box.left) * UNIT, (box.high - crossing.over.y) * UNIT
            lies, other = along(crossing, heading_on_top(black, place))
            # A third strand may cover both; then it is neither's direction that counts.
            if max(lies, other) > 0.98 and abs(lies - other) > 0.1:
                assert lies > other or covered(crossing, strands)


def covered(crossing: Crossing, strands: Sequence[Course]) -> bool:
    """Return whether a third part of some strand lies over a crossing."""
    spot = (crossing.over.x, crossing.over.y)
    return any(
        dist(point[:2], spot) < 0.6 and point[2] > crossing.over.z + 0.5
        for strand in strands
        for point in strand.points
    )


def test_what_passes_over_has_white_on_either_side() -> None:
    paths = inked(
        (
            straight(0, 0),
            straight(0, 1, across=True),
        ),
        UNIT,
    )
    white = next(place for place, path in enumerate(paths) if path.grey == 1 and path.line > UNIT)
    lower, upper = paths[0], paths[white + 1]
    assert white > 0
    assert upper.line < paths[white].line
    assert (lower.grey, upper.grey) == (0.0, 0.0)


def test_strands_that_touch_keep_their_edges() -> None:
    # side by side they take one layer: nothing white is laid over either
    paths = inked(
        (
            straight(0, 0),
            straight(1, 0.4),
        ),
        UNIT,
    )
    assert [path.grey for path in paths] == [0.0, 1.0]


def test_outline_is_two_edges_of_half_a_point_round_white() -> None:
    ink, core = inked((straight(0, 0),), UNIT)
    assert ink.line == pytest.approx(INK * UNIT)
    assert ink.line - core.line == pytest.approx(2 * EDGE)
    assert EDGE >= 0.5


def test_cut_end_is_closed_and_running_end_open() -> None:
    ink, core = inked((straight(0, 0, last_cut=True),), UNIT)
    (start, *_), *_ = traced(ink)
    (core_start, *_), *_ = traced(core)
    *_, (_, end) = traced(ink)
    *_, (_, core_end) = traced(core)
    assert core_start[0] < start[0]  # the white runs out with the edges
    assert end[0] - core_end[0] >= EDGE  # and stops before the cut


def test_drawing_a_straight_strand_takes_one_line() -> None:
    ink, _ = inked((straight(0, 0),), UNIT)
    assert [step[0] for step in ink.steps] == ["move", "line"]
