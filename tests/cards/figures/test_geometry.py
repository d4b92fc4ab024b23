"""Every strand of every figure could be tied: nothing broken, kinked or run through."""

from itertools import accumulate, combinations_with_replacement, pairwise
from math import acos, degrees, dist, inf

from msgspec.structs import replace

from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Knot
from tests.cards.figures.stages import every_figure, knot_strands
from tests.cards.figures.topology import Point

NEAR = 0.8  # thicknesses between middles: less than 1, for line gives
ALONG = 2.5  # its own thicknesses along a strand; nearer points are one bend
HOLLOW = "needle knot"  # the butt runs in the core of the line, from its tip to the hole
HOLE = 3.6
METAL = 0.8  # an eye, a ring or a swivel, whose wire meets itself


def angle(a: Point, b: Point, c: Point) -> float:
    u, v = [q - p for p, q in zip(a, b, strict=True)], [q - p for p, q in zip(b, c, strict=True)]
    cosine = sum(p * q for p, q in zip(u, v, strict=True)) / (dist(a, b) * dist(b, c))
    return degrees(acos(max(-1.0, min(1.0, cosine))))


def nearest(a: Course, b: Course) -> float:
    """Return the least distance between two strands, or between far parts of one."""
    along = [list(accumulate(dist(p, q) for p, q in pairwise(s.points))) for s in (a, b)]
    return min(
        (
            dist(p, q)
            for p, at in zip(a.points, along[0], strict=False)
            for q, other in zip(b.points, along[1], strict=False)
            if abs(p[0] - q[0]) < 2 and (a is not b or abs(at - other) > ALONG * a.width)
        ),
        default=inf,
    )


def outside(tube: Course, strand: Course) -> Course:
    """Return what of a strand does not lie in the middle of a tube, drawn along the x axis."""
    _, high, _ = tube.points[0]
    beyond = (p for p in strand.points if abs(p[1] - high) > 0.1 or abs(p[2]) > 0.1)
    return replace(strand, points=tuple(beyond))


@every_figure
def test_strands_are_smooth_and_unbroken(knot: Knot, thick: int, thin: int) -> None:
    for strands in knot_strands(knot, thick, thin):
        for strand in strands:
            assert all(dist(a, b) < 0.4 for a, b in pairwise(strand.points))
            points = strand.points
            bends = (
                angle(a, b, c) for a, b, c in zip(points, points[1:], points[2:], strict=False)
            )
            assert max(bends) < 50  # degrees in a quarter of a thickness


@every_figure
def test_no_strand_runs_through_another_or_itself(knot: Knot, thick: int, thin: int) -> None:
    for strands in knot_strands(knot, thick, thin):
        for a, b in combinations_with_replacement(strands, 2):
            if a.width == b.width == METAL:
                continue
            if a is not b and b.first_cut and b.last_cut:
                a = outside(b, a)
            elif a is not b and knot.name == HOLLOW:
                b = replace(b, points=tuple(p for p in b.points if p[0] < a.points[-1][0] - HOLE))
            assert nearest(a, b) >= NEAR * (a.width + b.width) / 2
