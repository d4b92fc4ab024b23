"""Closely spaced places on the paper in, the few Bézier curves that pass through them out."""

from collections.abc import Iterator, Sequence
from math import ceil, inf
from operator import sub
from typing import TypeAlias, cast

from msgspec import Struct

from tagend.layouts.paper.face import CurveTo, LineTo, MoveTo, Step

Spot: TypeAlias = tuple[float, float]
_Step: TypeAlias = MoveTo | LineTo | CurveTo

_BEND = 0.5  # radians in one curve, at most: further, it would leave its places visibly
_STRAIGHT = 0.02  # radians that no eye sees: a line will do
_LONG = 5.0  # points of a curve that does bend, at most
_TIGHT = 0.6  # of the pen's width: the radius of a bend that the pen fills
_CHORD = 0.5  # radians from one of its lines to the next


class Trace(Struct, frozen=True):
    """A line on the paper: its places, and its direction at each of them, as complex numbers."""

    places: Sequence[complex]
    ways: Sequence[complex]  # of length 1
    lengths: Sequence[float]  # from each place to the next
    turns: Sequence[float]  # of its direction on that way, in radians, a little less


class Stroke(Struct, frozen=True):
    """One stroke of a pen, and what of it is too tight for any pen but one with round ends."""

    steps: Sequence[_Step]
    tight: Sequence[_Step]
    ways: tuple[complex, complex]  # its directions at either end

    def longer(self, first: float, last: float) -> Iterator[Step]:
        """Yield its steps, begun and ended so many points further out."""
        (begin, end), (at, *middle, to) = self.ways, self.steps
        yield "move", at[1] - first * begin.real, at[2] - first * begin.imag
        yield from middle
        further = to[-2] + last * end.real, to[-1] + last * end.imag
        yield cast(Step, (*to[:-2], *further))


def trace(places: Sequence[complex]) -> Trace:
    """Return a line through places, its directions those from the place before to the next."""
    across = list(map(sub, [*places[1:], places[-1]], [places[0], *places]))
    ways = [way / (abs(way) or 1.0) for way in across]
    return Trace(
        places=places,
        ways=ways,
        lengths=list(map(abs, map(sub, places[1:], places))),
        turns=list(map(abs, map(sub, ways[1:], ways))),
    )


def stroke(of: Trace, first: int, last: int, pen: float) -> Stroke:
    """Return a stroke from one place of a line to another.

    Strokes along neighbouring parts of a line meet without a bend. Where it bends more tightly than
    its pen is wide, its steps are for a pen with round ends.
    """
    places, ways = of.places, of.ways
    turns = of.turns[first:last]
    start = first
    plain: list[_Step] = [("move", *_spot(places[start]))]
    tight: list[_Step] = []
    bent, far = 0.0, 0.0
    each = zip(of.lengths[first:last], turns, [*turns[1:], inf], strict=True)
    for end, (length, turn, ahead) in enumerate(each, start=first + 1):
        far += length
        bent += turn
        if bent + ahead <= _BEND and (bent <= _STRAIGHT or far <= _LONG):
            continue
        a, d = places[start], places[end]
        if bent <= _STRAIGHT:
            plain.append(("line", *_spot(d)))
        else:
            b, c = a + ways[start] * far / 3, d - ways[end] * far / 3
            if far < _TIGHT * pen * bent:
                tight += _in_lines((a, b, c, d), ceil(bent / _CHORD))
                plain.append(("move", *_spot(d)))
            else:
                plain.append(("curve", b.real, b.imag, c.real, c.imag, d.real, d.imag))
        start, bent, far = end, 0.0, 0.0
    return Stroke(steps=plain, tight=tight, ways=(ways[first], ways[last]))


def _in_lines(curve: tuple[complex, complex, complex, complex], count: int) -> Iterator[_Step]:
    """Yield a curve as lines of their own: a pen that is wider than a bend leaves a hole in it."""
    at, b, c, d = curve
    for place in range(1, count + 1):
        t = place / count
        s = 1 - t
        to = s**3 * curve[0] + 3 * s * s * t * b + 3 * s * t * t * c + t**3 * d
        yield ("move", *_spot(at))
        yield ("line", *_spot(to))
        at = to


def _spot(place: complex) -> Spot:
    return place.real, place.imag
