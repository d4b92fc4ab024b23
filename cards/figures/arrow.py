"""The mark of an end that moves: points up to the end of a strand in, an arrow out."""

from collections.abc import Sequence
from math import atan2, cos, sin

from msgspec import Struct

from tagend.cards.figures.curve import Point

MIDDLE = 1.9  # beyond the end of its strand, and the room about it
_BEFORE = 3  # points from which the direction of an end is taken


class Arrow(Struct, frozen=True):
    """The end of a strand that moves: its place, and its direction in radians."""

    x: float
    y: float
    angle: float

    @property
    def middle(self) -> Point:
        return self.x + MIDDLE * cos(self.angle), self.y + MIDDLE * sin(self.angle), 0.0


def at_end(points: Sequence[Point]) -> Arrow:
    """Return an arrow at the end of some points, in their direction."""
    before, end = points[-1 - _BEFORE], points[-1]
    return Arrow(end[0], end[1], atan2(end[1] - before[1], end[0] - before[0]))
