"""A hook's eye, and the bend of a strand that goes through it."""

from math import cos, radians, sin

from cards.faces.figures.curve import Point, smooth
from cards.faces.figures.strand import Strand

_R = 1.5
_WIRE = 0.8


def eye(x: float, y: float = 0.0) -> Strand:
    """Return the eye whose middle is there, open where its wire comes back to the shank."""
    angles = (radians(degrees) for degrees in range(35, 346, 31))
    ring = [(x + _R * cos(angle), y + _R * sin(angle), 0.0) for angle in angles]
    shank = [(x + 4.5, y, 0.0), (x + 3.0, y, 0.0), (x + 2.2, y + 0.1, 0.0)]
    return Strand(smooth([*shank, *ring]), "solid", _WIRE)


def through(x: float, y: float = 0.0, over: float = 0.6) -> list[Point]:
    """Return corners of a strand from the left, round the eye's near side, and back.

    It goes in over the eye at `y + over` and comes out under it as far on the other side.
    """
    return [
        (x - 2.0, y + over, 0.9),
        (x - 0.2, y + over, 0.7),
        (x - 0.2, y - over, -0.7),
        (x - 2.0, y - over, -0.9),
    ]
