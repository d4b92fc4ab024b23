"""A hook's eye, a ring and a swivel, and the bend of a strand that goes through them."""

from math import cos, radians, sin

from tagend.cards.figures.curve import Point, rows, smooth
from tagend.cards.figures.strand import Course

_R = 1.5  # of the eye, from which `through` takes its distances
_WIRE = 0.8
SWIVEL = 3.3  # from the middle of a swivel to that of either eye


def eye(x: float, y: float = 0.0, radius: float = _R, shank: float = 3.0) -> Course:
    """Return the eye whose middle is there, with the beginning of its shank to the right."""
    near = x + radius + 0.7
    bend = rows(x=(x + radius + shank, near + 0.8, near), y=(y, y, y + 0.1))
    return Course(smooth([*bend, *_circle(x, y, radius, 35, 370)]), "solid", _WIRE)


def ring(radius: float) -> Course:
    """Return a ring round the origin."""
    return Course(smooth(_circle(0.0, 0.0, radius, 0, 360)), "solid", _WIRE)


def swivel() -> tuple[Course, ...]:
    """Return a swivel's two eyes, `SWIVEL` to the left and right of the origin, and its body."""
    eyes = [_circle(x, 0.0, _R, 0, 360) for x in (-SWIVEL, SWIVEL)]
    body = [[(-x, y, 0.0), (x, y, 0.0)] for x, y in ((0.9, 0.55), (1.9, 0.0), (0.9, -0.55))]
    return tuple(Course(smooth(places), "solid", _WIRE) for places in (*eyes, *body))


def _circle(x: float, y: float, radius: float, start: int, end: int) -> list[Point]:
    angles = (radians(start + (end - start) * step / 12) for step in range(13))
    return [(x + radius * cos(angle), y + radius * sin(angle), 0.0) for angle in angles]


def through(x: float, y: float = 0.0, over: float = 0.6) -> list[Point]:
    """Return corners of a strand from the left, round the near side of an eye, and back.

    It goes in over the eye at `y + over` and comes out under it as far on the other side.
    """
    return rows(
        x=(x - 2.0, x - 0.2, x - 0.2, x - 2.0),
        y=(y + over, y + over, y - over, y - over),
        z=(0.9, 0.7, -0.7, -0.9),
    )
