"""The course of a strand in a figure: its way through space, and how it looks."""

from collections.abc import Sequence
from math import hypot
from typing import Literal, TypeAlias

from msgspec import Struct

from tagend.cards.figures.curve import Point, smooth

Look: TypeAlias = Literal["outline", "solid"]

_FOLD = 0.4  # of a fold, beyond its legs and to either side of their middle


class Course(Struct, frozen=True):
    """Points along a strand, from its first end to its last, in strand's thicknesses.

    A cut end is closed; any other runs on beyond the figure.
    """

    points: tuple[Point, ...]
    look: Look
    width: float = 1.0
    first_cut: bool = False
    last_cut: bool = False


def line(places: Sequence[Point], look: Look = "outline") -> Course:
    """Return a strand from its standing part, which runs on, to its tag, which is cut."""
    return Course(smooth(places), look, last_cut=True)


def pair(thick: Sequence[Point], thin: Sequence[Point]) -> tuple[Course, ...]:
    """Return two strands, each from its standing part to its tag."""
    return line(thick), line(thin, "solid")


def beside_one_another(thick: Sequence[Point], thin: Sequence[Point]) -> tuple[Course, ...]:
    """Return two strands that go one way, so that the thin one's tag comes first."""
    return line(thick), Course(smooth(thin), "solid", first_cut=True)


def folded(out: Sequence[Point], back: Sequence[Point]) -> list[Point]:
    """Return a strand along one leg, round its fold, and back along the other leg.

    Both legs are given up to the fold, to which they go side by side, straight on the paper.
    """
    (x1, y1, z), (x2, y2, _), (x3, y3, _) = out[-1], back[-1], out[-2]
    apart, last = hypot(x2 - x1, y2 - y1), hypot(x1 - x3, y1 - y3)
    x, y = (x1 + x2) / 2 + _FOLD * (x1 - x3) / last, (y1 + y2) / 2 + _FOLD * (y1 - y3) / last
    aside, up = _FOLD * (x1 - x2) / apart, _FOLD * (y1 - y2) / apart
    return [*out, (x + aside, y + up, z), (x - aside, y - up, z), *reversed(back)]


def turned(places: Sequence[Point]) -> list[Point]:
    """Return places turned half round about the line of sight."""
    return [(-x, -y, z) for x, y, z in places]
