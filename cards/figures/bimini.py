"""The bimini twist, told by a part of it: the strand, and a break for what is left out, out."""

from math import pi, sin

from tagend.cards.figures.curve import Point, coil, rounded, rows, smooth
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, line

_TWIST = 4  # of its many turns, those that are drawn
_PITCH, _CLOSE = 2.4, 1.95  # laid up and drawn up
_ROLLED = 6  # turns of the tag back over it
_R, _DEEP = 0.6, 0.9  # of either part, from the middle of the twist
_WIDE = 1.9  # of either leg there where each is hitched alone
_LEGS = 10.0  # from the fork to the hitch round both
_OVER = 1.75  # of the turns that roll back over it
_HITCH = 4  # turns of the last hitch, as knots.toml has them


def bimini_laid(*_: int) -> tuple[Course, ...]:
    """The twist, the tag rolled back over it to the fork, and its hitches round the legs.

    It hitches either leg, and then both.
    """
    return _bimini(_PITCH, 1.5)


def bimini_drawn(*_: int) -> tuple[Course, ...]:
    """The turns close, and the hitch drawn up."""
    return _bimini(_CLOSE, 1.2)


def bimini_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The twist, the way back over it, the hitch of either leg, and that of both."""
    fork = _TWIST * _PITCH
    return (
        Stage((((0.0, -_R, 0.0),),), moves=(0,), count=Count(turns, "light")),
        Stage((((fork - 0.3, -_OVER, 0.0),),), moves=(0,)),
        Stage((((fork + 7.6, -2.3, -1.0),),), moves=(0,)),
        Stage((), moves=(0,), count=Count(_HITCH)),
    )


def _bimini(pitch: float, hitch: float) -> tuple[Course, ...]:
    fork = _TWIST * pitch
    out = coil(0.0, fork, _TWIST, 0, _R, _DEEP)
    back = coil(fork, 0.0, -_TWIST, 180, _R, _DEEP)
    near = fork + _LEGS
    end = near + 0.8 + _HITCH * hitch
    leg = rows(
        x=(fork, fork + 1.0, near - 2.0, near, end + 0.4, end + 2.0, end + 4.6),
        y=(_R, _WIDE, _WIDE, _R, _R, 1.8, 1.8),
    )
    loop = [*leg, *((x, -y, z) for x, y, z in reversed(leg))]
    rolled = coil(0.3, fork - 0.3, -_ROLLED, 180, _OVER, 2.2)
    lead = rows(x=(0.0, -1.0, -1.4, 0.3), y=(-_R, -0.9, -1.75, -1.75), z=(0.0, 0.2, 0.4, 0.4))
    around = coil(end, near, -_HITCH, 90, 1.7, 2.6)
    tag = rows(x=(near - 0.2, near - 0.6), y=(2.4, 4.0), z=(0.6, 0.0))
    standing = rows(x=(-7.0, -1.6, -0.8), y=(0.3, 0.3, 0.5))
    places = [
        *standing,
        *out[:-1],
        *rounded(loop, 1.2)[1:-1],
        *back[:-1],
        *rounded(lead, 0.5)[1:-1],
        *rolled[1:-1],
        *rounded(_hitched(fork, end), 0.5)[1:-1],
        *around[1:-1],
        *tag,
    ]
    return line(places), _break(fork / 2)


def _hitched(fork: float, end: float) -> list[Point]:
    """Return corners of the tag from the fork: round the lower leg, the upper one, and on."""
    lower = rows(
        x=(-0.3, 0.8, 3.2, 3.2, 3.2, 1.4, 1.4, 1.4, 1.4, 2.4),
        y=(-_OVER, -3.3, -3.3, -_WIDE, -0.4, -0.4, -_WIDE, -3.3, -4.8, -4.8),
        z=(0.0, -0.9, -0.6, 1.5, 0.4, -0.4, -1.5, 0.9, 0.6, 0.0),
    )
    upper = rows(
        x=(6.2, 6.2, 6.2, 6.2, 6.2, 4.4, 4.4, 4.4, 6.2, 7.6, 7.6, 7.6),
        y=(-4.8, -_WIDE, 0.4, _WIDE, 3.4, 3.4, _WIDE, 0.4, 0.4, 0.4, -_WIDE, -2.7),
        z=(0.0, -1.5, -0.6, 1.5, 0.4, -0.4, -1.5, 0.0, 1.1, 0.0, -1.5, -1.0),
    )
    on = rows(x=(end + 0.8, end + 1.2, end), y=(-2.7, -2.0, -1.4), z=(1.4, 2.4, 2.6))
    return [*((fork + x, y, z) for x, y, z in (*lower, *upper)), *on]


def _break(x: float) -> Course:
    """Return the mark for a part that is left out: two waved edges with white between them."""
    places: list[Point] = [(x + 0.35 * sin(y * pi / 2.9), y, 6.0) for y in range(-3, 4)]
    return Course(smooth(places), "outline", 1.7)


BIMINI = Figure(((bimini_laid, bimini_steps),), bimini_drawn)
