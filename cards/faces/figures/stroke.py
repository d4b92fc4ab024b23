"""Closely spaced places on the paper in, the few Bézier curves that pass through them out."""

from collections.abc import Iterator, Sequence
from math import acos, dist, hypot
from typing import TypeAlias

from layouts.face import Step

Place: TypeAlias = tuple[float, float]

_BEND = 0.5  # radians in one curve, at most: further, it would leave its places visibly
_STRAIGHT = 0.02  # radians that no eye sees: a line will do
_CUSP = 1.2  # radians from one place to the next: a pen's mitred corner would stick out


def stroke(places: Sequence[Place], first: int, last: int, laps: Place, most: float) -> list[Step]:
    """Return a stroke from one of the places to another, beginning and ending `laps` further out.

    A lap below 0 stops short. No curve is longer than `most`. Directions are those of the whole
    line, so that strokes along neighbouring parts of it meet without a bend.
    """
    ways = [_way(places, place) for place in range(first, last + 1)]
    line = list(places[first : last + 1])
    line[0] = _moved(line[0], ways[0], -laps[0])
    line[-1] = _moved(line[-1], ways[-1], laps[1])
    return [_rounded("move", line[0]), *_curves(line, ways, most)]


def _curves(line: Sequence[Place], ways: Sequence[Place], most: float) -> Iterator[Step]:
    start, bent, far = 0, 0.0, 0.0
    for end in range(1, len(line)):
        turn = _angle(ways[end - 1], ways[end])
        if turn > _CUSP:
            yield from (_rounded("line", line[end]), _rounded("move", line[end]))
            start, bent, far = end, 0.0, 0.0
            continue
        far += dist(line[end - 1], line[end])
        bent += turn
        ahead = _angle(ways[end], ways[end + 1]) if end + 1 < len(line) else _BEND
        if bent + ahead > _BEND or (bent > _STRAIGHT and far > most):
            yield _curve(line, ways, start, end, far if bent > _STRAIGHT else 0.0)
            start, bent, far = end, 0.0, 0.0
