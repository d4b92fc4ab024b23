"""The uni to uni: the turns of either side in, its two strands laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, pair, turned

_ROOM = 20.0  # for the turns of both sides, laid up
_WINDOW = 1.7  # half of what shows between the barrels


def uni_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """Each tag turned back into a loop over both strands and passed through it, round both."""
    step = pitch(thick + thin, _ROOM, 1.6)
    right, left = 2.5 + thick * step, 2.5 + thin * step
    a = _laid(thick, right, left)
    b = _laid(thin, left, right)
    return pair(a, turned(b))


def _laid(turns: int, far: float, near: float) -> list[Point]:
    end = far + 2.2
    loop = rows(
        x=(-near - 4.6, end, end, 1.5, 1.9),
        y=(0.55, 0.55, 2.9, 2.9, 1.5),
        z=(0.0, 0.0, 0.0, 0.0, 0.9),
    )
    tag = rows(x=(far, far + 1.2, end + 2.2), y=1.7, z=(0.0, 1.2, 1.2))
    return wound(loop, coil(2.5, far, turns, 0, 1.6, 1.3)[1:], tag, 1.1)


def uni_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """The barrels drawn close and together, each round both strands and its own tag.

    As the loop closes, the turns go over to it, in the other sense, and leave the tag straight.
    """
    right, left = _WINDOW + thick * CLOSE, _WINDOW + thin * CLOSE
    a = _drawn(thick, right, left)
    b = _drawn(thin, left, right)
    return pair(a, turned(b))


def _drawn(turns: int, far: float, near: float) -> list[Point]:
    lead = rows(
        x=(-near - 3.5, -1.6, -0.5, 0.5, 1.6, far + 1.6, far + 1.6, far - 0.3),
        y=(0.0, 0.0, 0.7, 0.7, 0.0, 0.0, 0.0, 0.1),
        z=(1.0, 1.0, 0.6, 0.4, 0.0, 0.0, -2.6, -2.6),
    )
    tag = rows(
        x=(_WINDOW, _WINDOW - 0.4, _WINDOW - 0.4, far + 0.1, far + 1.4, far + 2.8),
        y=(-1.05, -1.1, 0.0, 0.0, 1.0, 1.9),
        z=(0.0, -1.3, -1.2, -1.0, -1.0, -1.0),
    )
    return wound(lead, coil(far, _WINDOW, turns - 0.25, -90, 1.05, 2.5), tag)


def uni_steps(thick: int, thin: int) -> tuple[Stage, ...]:
    """The loop over both strands, its passes, and the same on the other side."""
    step = pitch(thick + thin, _ROOM, 1.6)
    lapped: Point = (-2.0, -0.55, 0.0)
    over: Point = (2.5 + 0.45 * step, -1.5, 0.4)
    return (
        Stage(((over,), (lapped,)), moves=(0,)),
        Stage((None, (lapped,)), moves=(0,), count=Count(thick, "heavy")),
        Stage((), moves=(1,), count=Count(thin, "light")),
    )


UNI = Figure(((uni_laid, uni_steps),), uni_drawn)
