"""Closely spaced places on the paper in, the few Bézier curves that pass through them out."""

from collections.abc import Iterator, Sequence
from math import acos, ceil, copysign, dist, hypot, inf
from typing import TypeAlias

from msgspec import Struct

from tagend.layouts.paper.face import Step

Spot: TypeAlias = tuple[float, float]
Steps: TypeAlias = tuple[list[Step], list[Step]]  # the latter for a pen with round ends

_BEND = 0.5  # radians in one curve, at most: further, it would leave its places visibly
_STRAIGHT = 0.02  # radians that no eye sees: a line will do
_LONG = 5.0  # points of a curve that does bend, at most
_TIGHT = 0.6  # of the pen's width: the radius of a bend that the pen fills
_CHORD = 0.5  # radians from one of its lines to the next


class Trace(Struct, frozen=True):
    """A line on the paper: its places, and its direction at each of them."""

    places: tuple[Spot, ...]
    ways: tuple[Spot, ...]
    lengths: tuple[float, ...]  # from each place to the next
    turns: tuple[float, ...]  # of its direction on that way, in radians


def trace(places: Sequence[Spot]) -> Trace:
    """Return a line through places, its directions those from the place before to the next."""
    ways = []
    for (x1, y1), (x2, y2) in zip([places[0], *places], [*places[1:], places[-1]], strict=False):
        far = hypot(x2 - x1, y2 - y1) or 1.0
        ways.append(((x2 - x1) / far, (y2 - y1) / far))
    return Trace(
        places=tuple(places),
        ways=tuple(ways),
        lengths=tuple(map(dist, places, places[1:])),
        turns=tuple(map(_angle, ways, ways[1:])),
    )


def stroke(of: Trace, first: int, last: int, laps: Spot, pen: float) -> Steps:
    """Return a stroke from one place of a line to another, begun and ended `laps` further out.

    A lap below 0 stops short. Strokes along neighbouring parts of a line meet without a bend. Where
    it bends more tightly than its pen is wide, its steps are for a pen with round ends.
    """
    ways, turns = of.ways[first : last + 1], of.turns[first:last]
    line, lengths = list(of.places[first : last + 1]), list(of.lengths[first:last])
    line[0] = _moved(line[0], ways[0], -laps[0])
    line[-1] = _moved(line[-1], ways[-1], laps[1])
    lengths[0], lengths[-1] = dist(*line[:2]), dist(*line[-2:])
    plain: list[Step] = [("move", *_rounded(line[0]))]
    tight: list[Step] = []
    start, bent, far = 0, 0.0, 0.0
    each = zip(lengths, turns, (*turns[1:], inf), strict=True)
    for end, (length, turn, ahead) in enumerate(each, start=1):
        far += length
        bent += turn
        if bent + ahead <= _BEND and (bent <= _STRAIGHT or far <= _LONG):
            continue
        if bent <= _STRAIGHT:
            plain.append(("line", *_rounded(line[end])))
        else:
            a = _moved(line[start], ways[start], far / 3)
            b = _moved(line[end], ways[end], -far / 3)
            if far < _TIGHT * pen * bent:
                tight += _in_lines((line[start], a, b, line[end]), ceil(bent / _CHORD))
                plain.append(("move", *_rounded(line[end])))
            else:
                plain.append(("curve", *_rounded(a), *_rounded(b), *_rounded(line[end])))
        start, bent, far = end, 0.0, 0.0
    return plain, tight


def _in_lines(curve: tuple[Spot, Spot, Spot, Spot], count: int) -> Iterator[Step]:
    """Yield a curve as lines of their own: a pen that is wider than a bend leaves a hole in it."""
    (x1, y1), (x2, y2), (x3, y3), (x4, y4) = curve
    at = _rounded(curve[0])
    for place in range(1, count + 1):
        t = place / count
        s = 1 - t
        a, b, c, d = s**3, 3 * s * s * t, 3 * s * t * t, t**3
        x, y = a * x1 + b * x2 + c * x3 + d * x4, a * y1 + b * y2 + c * y3 + d * y4
        if at != (to := _rounded((x, y))):
            yield ("move", *at)
            yield ("line", *to)
            at = to


def _angle(a: Spot, b: Spot) -> float:
    cosine = a[0] * b[0] + a[1] * b[1]
    return acos(cosine if -1.0 <= cosine <= 1.0 else copysign(1.0, cosine))


def _moved(place: Spot, way: Spot, by: float) -> Spot:
    return place[0] + way[0] * by, place[1] + way[1] * by


def _rounded(place: Spot) -> Spot:
    return round(place[0], 2), round(place[1], 2)
