"""Closely spaced places on the paper in, the few Bézier curves that pass through them out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import acos, dist, hypot, inf
from typing import TypeAlias

from tagend.layouts.paper.face import Step

Spot: TypeAlias = tuple[float, float]

_BEND = 0.5  # radians in one curve, at most: further, it would leave its places visibly
_STRAIGHT = 0.02  # radians that no eye sees: a line will do
_LONG = 5.0  # points of a curve that does bend, at most
_CUSP = 2.0  # radians from one place to the next: a pen's mitred corner would stick out


@dataclass(frozen=True, slots=True)
class Trace:
    """A line on the paper: its places, and its direction at each of them."""

    places: tuple[Spot, ...]
    ways: tuple[Spot, ...]


def trace(places: Sequence[Spot]) -> Trace:
    """Return a line through places, its directions those from the place before to the next."""
    ways = []
    for (x1, y1), (x2, y2) in zip([places[0], *places], [*places[1:], places[-1]], strict=False):
        far = hypot(x2 - x1, y2 - y1) or 1.0
        ways.append(((x2 - x1) / far, (y2 - y1) / far))
    return Trace(tuple(places), tuple(ways))


def stroke(of: Trace, first: int, last: int, laps: Spot) -> Iterator[Step]:
    """Yield a stroke from one place of a line to another, begun and ended `laps` further out.

    A lap below 0 stops short. Strokes along neighbouring parts of a line meet without a bend.
    """
    ways = of.ways[first : last + 1]
    line = list(of.places[first : last + 1])
    line[0] = _moved(line[0], ways[0], -laps[0])
    line[-1] = _moved(line[-1], ways[-1], laps[1])
    turns = [_angle(a, b) for a, b in pairwise(ways)]
    yield ("move", *_rounded(line[0]))
    start, bent, far = 0, 0.0, 0.0
    for end, (turn, ahead) in enumerate(zip(turns, [*turns[1:], inf], strict=True), start=1):
        far += dist(line[end - 1], line[end])
        bent += turn
        if turn > _CUSP:
            yield ("line", *_rounded(line[end]))
            yield ("move", *_rounded(line[end]))
        elif bent + ahead <= _BEND and (bent <= _STRAIGHT or far <= _LONG):
            continue
        elif bent <= _STRAIGHT:
            yield ("line", *_rounded(line[end]))
        else:
            a = _moved(line[start], ways[start], far / 3)
            b = _moved(line[end], ways[end], -far / 3)
            yield ("curve", *_rounded(a), *_rounded(b), *_rounded(line[end]))
        start, bent, far = end, 0.0, 0.0


def _angle(a: Spot, b: Spot) -> float:
    return acos(max(-1.0, min(1.0, a[0] * b[0] + a[1] * b[1])))


def _moved(place: Spot, way: Spot, by: float) -> Spot:
    return place[0] + way[0] * by, place[1] + way[1] * by


def _rounded(place: Spot) -> Spot:
    return round(place[0], 2), round(place[1], 2)
