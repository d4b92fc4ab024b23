"""Curves in space: a few places on a strand in, closely spaced points along it out.

x runs along the leader towards the fly, y up the paper, z towards the reader; a length of 1 is
a strand's own thickness.

A strand is a Catmull-Rom spline through its places (E. Catmull, R. Rom, "A class of local
interpolating splines", 1974), its parameter growing with the square root of the distance, which
keeps it from cusps and overshoots (C. Yuksel, S. Schaefer, J. Keyser, "Parameterization and
applications of Catmull-Rom curves", Computer-Aided Design 43, 2011). A coil is a helix: the
angle about the x axis grows evenly with x.
"""

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from math import ceil, cos, dist, hypot, pi, sin
from typing import TypeAlias

Point: TypeAlias = tuple[float, float, float]
Row: TypeAlias = float | Sequence[float]

STEP = 0.25  # between neighbouring points of a smooth curve, about
CLOSE = 1.05  # from one turn of a coil to the next where they touch
_A_TURN = 12  # places on one turn: the spline leaves the helix by less than 0.003 of its radius
_EASE = 1.2  # reaches from a corner to the places that keep the lines straight


def pitch(turns: int, room: float, most: float) -> float:
    """Return the way from one turn to the next: so that all have room, or else as they touch."""
    return max(CLOSE, min(most, room / turns))


def rows(x: Row, y: Row, z: Row = 0.0) -> list[Point]:
    """Return places of which each coordinate has its row; one number stands for a whole row.

    In the row of z, what passes over others is above 0 and what passes under them below.
    """
    count = max(len(row) for row in (x, y, z) if not isinstance(row, (int, float)))
    full = ([row] * count if isinstance(row, (int, float)) else row for row in (x, y, z))
    return [(x, y, z) for x, y, z in zip(*full, strict=True)]


def coil(
    start: float, end: float, turns: float, angle: float, high: float, deep: float
) -> list[Point]:
    """Return places on a helix about the x axis, `high` along y and `deep` along z.

    Depth does not show on the paper; it may be larger, to keep strands clear of one another. It
    starts at `angle` degrees, where 0 is the top and 90 the front, and makes `turns` turns,
    counted negative where the angle falls. As x grows, a growing angle is a right-handed helix.
    """
    count = max(ceil(abs(turns) * _A_TURN), 2)
    places = []
    for place in range(count + 1):
        share = place / count
        turned = (angle / 360 + turns * share) * 2 * pi
        x = start + (end - start) * share
        places.append((x, high * cos(turned), deep * sin(turned)))
    return places


def rounded(corners: Sequence[Point], reach: float) -> list[Point]:
    """Return places along straight lines whose corners are rounded from `reach` before to after.

    A corner becomes a parabola, which leaves one line and meets the next in their directions; the
    places just before and after it keep the lines straight.
    """
    places = [corners[0]]
    for before, corner, after in zip(corners, corners[1:], corners[2:], strict=False):
        start, end = _towards(corner, before, reach), _towards(corner, after, reach)
        places.append(_towards(corner, before, reach, _EASE))
        (x1, y1, z1), (x2, y2, z2), (x3, y3, z3) = start, corner, end
        for t in (0.0, 0.25, 0.5, 0.75, 1.0):
            a, b, c = (1 - t) ** 2, 2 * t * (1 - t), t**2
            places.append(
                (a * x1 + b * x2 + c * x3, a * y1 + b * y2 + c * y3, a * z1 + b * z2 + c * z3)
            )
        places.append(_towards(corner, after, reach, _EASE))
    return [*places, corners[-1]]


def _towards(start: Point, end: Point, far: float, times: float = 1.0) -> Point:
    """Return the place so far along a line; on a short line, less, so that corners never meet."""
    share = times * far / max(dist(start, end), 2.5 * far)
    (x1, y1, z1), (x2, y2, z2) = start, end
    return x1 + (x2 - x1) * share, y1 + (y2 - y1) * share, z1 + (z2 - z1) * share


def wound(
    lead: Sequence[Point], helix: Sequence[Point], tail: Sequence[Point], reach: float = 0.8
) -> list[Point]:
    """Return places along a line of corners, on through a coil, and along a line that leaves it.

    The last corner before the coil and the first after it only say where the lines head.
    """
    return [*rounded(lead, reach)[:-1], *helix[1:-1], *rounded(tail, reach)[1:]]


def beside(corners: Sequence[Point], side: float) -> list[Point]:
    """Return corners of a line `side` to the left of another, as both are seen on the paper."""
    ways = []
    for (x1, y1, _), (x2, y2, _) in pairwise(corners):
        far = hypot(x2 - x1, y2 - y1)
        ways.append(((x2 - x1) / far, (y2 - y1) / far))
    moved = []
    for (x, y, z), (a, b), (c, d) in zip(corners, ways[:1] + ways, ways + ways[-1:], strict=True):
        mitre = side / (1 + a * c + b * d)
        moved.append((x - (b + d) * mitre, y + (a + c) * mitre, z))
    return moved


def smooth(places: Sequence[Point]) -> tuple[Point, ...]:
    """Return points of the spline through the places, from the first to the last."""
    first, last = _beyond(places[1], places[0]), _beyond(places[-2], places[-1])
    held = [first, *places, last]
    lengths = [dist(p, q) for p, q in pairwise(held)]
    spans = [length**0.5 for length in lengths]  # of the parameter
    ways = list(map(_way, held, places, held[2:], spans, spans[1:]))
    points: list[Point] = []
    parts = zip(pairwise(places), pairwise(ways), spans[1:-1], lengths[1:-1], strict=True)
    for ends, slopes, span, length in parts:
        points += _between(ends, slopes, span, ceil(length / STEP))
    return (*points, places[-1])


def _beyond(inner: Point, end: Point) -> Point:
    return (2 * end[0] - inner[0], 2 * end[1] - inner[1], 2 * end[2] - inner[2])


def _way(p: Point, q: Point, r: Point, before: float, after: float) -> Point:
    """Return the slope at q of the parabolas through three places, `before` and `after` apart."""
    (a, b, c), (d, e, f), (g, h, i), both = p, q, r, before + after
    return (
        (d - a) / before - (g - a) / both + (g - d) / after,
        (e - b) / before - (h - b) / both + (h - e) / after,
        (f - c) / before - (i - c) / both + (i - f) / after,
    )


def _between(
    ends: tuple[Point, Point], slopes: tuple[Point, Point], span: float, count: int
) -> list[Point]:
    """Return so many points from the first end up to, but not with, the other."""
    (x1, y1, z1), (x2, y2, z2) = ends
    (u1, v1, w1), (u2, v2, w2) = slopes
    points = []
    for h00, h10, h01, h11 in _weights(count):
        a, b = h10 * span, h11 * span
        points.append(
            (
                h00 * x1 + a * u1 + h01 * x2 + b * u2,
                h00 * y1 + a * v1 + h01 * y2 + b * v2,
                h00 * z1 + a * w1 + h01 * z2 + b * w2,
            )
        )
    return points


@lru_cache(maxsize=64)
def _weights(count: int) -> list[tuple[float, float, float, float]]:
    """Return the Hermite weights of either end, and of the direction there, at so many places."""
    shares = [(place / count, 1 - place / count) for place in range(count)]
    return [(s * s * (1 + 2 * t), t * s * s, t * t * (3 - 2 * t), -t * t * s) for t, s in shares]
