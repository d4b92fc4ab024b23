"""What of a strand is not laid up yet: where it ends, and all else, in; its free end out."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import product, starmap
from math import cos, dist, hypot, inf, pi, radians, sin
from typing import TypeAlias

from tagend.cards.figures.arrow import MIDDLE, Arrow, at_end
from tagend.cards.figures.curve import STEP, Point

_Spot: TypeAlias = tuple[float, float]
_Heading: TypeAlias = tuple[Point, float]  # a place, and a direction there in radians

_SHORTER = (1.0, 0.75, 0.55)  # of the length asked for, the best first
_BENDS = (0, 20, -20, 40, -40, 60, -60, 80, -80, 100, -100, 130, -130)  # degrees, the best first
_CLEAR = 0.9  # from all else
_TOUCHES = 1.6  # along it, where it may be near what it comes from
_OWN = 2.2  # along the strand before it


def free_end(
    head: Sequence[Point], rest: Sequence[Point], others: Sequence[Point], long: float
) -> tuple[list[Point], Arrow]:
    """Return the free end that is nearest to straight and clear of all, and the arrow at its end.

    Where there is a rest, it is a fold whose legs go side by side. Where nothing is clear, it is
    what comes nearest to that.
    """
    x, y, z = head[-1]
    half = ((x - rest[0][0]) / 2, (y - rest[0][1]) / 2) if rest else (0.0, 0.0)
    start, heading, side = (x - half[0], y - half[1], z), at_end(head).angle, hypot(*half)
    own = int(_OWN / STEP)
    near = [
        (p[0], p[1])
        for p in (*others, *head[:-own], *rest[own:])
        if hypot(p[0] - start[0], p[1] - start[1]) < long + 2 * MIDDLE
    ]
    best, way = -inf, []
    for length, bend in ((share * long, bend) for share in _SHORTER for bend in _BENDS):
        tried = list(_way(start, heading, radians(bend), length))
        clear = _clearance(tried, near, side)
        if clear > best:
            best, way = clear, tried
        if best >= 0:
            break
    left = -half[0] * sin(heading) + half[1] * cos(heading) > 0
    return _folded(way, side if left else -side) if rest else _single(way)


def _single(way: Sequence[_Heading]) -> tuple[list[Point], Arrow]:
    (x, y, _), angle = way[-1]
    return [place for place, _ in way], Arrow(x, y, angle)


def _folded(way: Sequence[_Heading], side: float) -> tuple[list[Point], Arrow]:
    """Return a fold about a line: its first leg goes so far to the left of that."""
    out, back = ([_aside(place, aside) for place in way] for aside in (side, -side))
    bow = [_turned(way[-1], side, share / 6) for share in range(1, 6)]
    x, y, _ = _turned(way[-1], side, 0.5)
    return [*out, *bow, *reversed(back)], Arrow(x, y, way[-1][1])


def _way(start: Point, heading: float, bend: float, length: float) -> Iterator[_Heading]:
    """Yield places along a free end that bends evenly."""
    x, y, z = start
    count = int(length / STEP)
    for step in range(1, count + 1):
        angle = heading + bend * (step - 0.5) / count
        x, y = x + STEP * cos(angle), y + STEP * sin(angle)
        yield (x, y, z), heading + bend * step / count


def _clearance(way: Sequence[_Heading], others: Sequence[_Spot], half: float) -> float:
    """Return by how much the least distance from others is more than it must be."""
    _, arrow = _single(way)
    spots = [(x, y) for (x, y, _), _ in way[int(_TOUCHES / STEP) :: 2]]
    return min(
        _nearest(spots, others) - (_CLEAR + half), _nearest([arrow.middle[:2]], others) - MIDDLE
    )


def _nearest(spots: Iterable[_Spot], others: Iterable[_Spot]) -> float:
    return min(starmap(dist, product(spots, others)), default=inf)


def _aside(of: _Heading, side: float) -> Point:
    (x, y, z), angle = of
    return x - side * sin(angle), y + side * cos(angle), z


def _turned(end: _Heading, side: float, share: float) -> Point:
    """Return a place on the half circle from one leg of a fold to the other."""
    (_, angle), (x, y, z) = end, _aside(end, side * cos(pi * share))
    along = abs(side) * sin(pi * share)
    return x + along * cos(angle), y + along * sin(angle), z
