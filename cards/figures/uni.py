"""The uni to uni: the turns of either side in, its two strands laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, wound
from tagend.cards.figures.strand import Course, line, turned

_ROOM = 20.0  # for the turns of both sides, laid up
_WINDOW = 1.7  # half of what shows between the barrels


def uni_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """Each tag turned back into a loop over both strands and passed through it, round both."""
    step = pitch(thick + thin, _ROOM, 1.6)
    right, left = 2.5 + thick * step, 2.5 + thin * step
    a = _laid(thick, right, left)
    b = _laid(thin, left, right)
    return line(a), line(turned(b), "solid")


def _laid(turns: int, far: float, near: float) -> list[Point]:
    end = far + 2.2
    loop = [
        (-near - 4.6, 0.55, 0.0),
        (end, 0.55, 0.0),
        (end, 2.9, 0.0),
        (1.5, 2.9, 0.0),
        (1.9, 1.5, 0.9),
    ]
    tag = [(far, 1.7, 0.0), (far + 1.2, 1.7, 1.2), (end + 2.2, 1.7, 1.2)]
    return wound(loop, coil(2.5, far, turns, 0, 1.6, 1.3)[1:], tag, 1.1)


def uni_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """The barrels drawn close and together, each round both strands and its own tag.

    As the loop closes, the turns go over to it, in the other sense, and leave the tag straight.
    """
    right, left = _WINDOW + thick * CLOSE, _WINDOW + thin * CLOSE
    a = _drawn(thick, right, left)
    b = _drawn(thin, left, right)
    return line(a), line(turned(b), "solid")


def _drawn(turns: int, far: float, near: float) -> list[Point]:
    lead = [
        (-near - 3.5, 0.0, 1.0),
        (-1.6, 0.0, 1.0),
        (-0.5, 0.7, 0.6),
        (0.5, 0.7, 0.4),
        (1.6, 0.0, 0.0),
        (far + 1.6, 0.0, 0.0),
        (far + 1.6, 0.0, -2.6),
        (far - 0.3, 0.1, -2.6),
    ]
    tag = [
        (_WINDOW, -1.05, 0.0),
        (_WINDOW - 0.4, -1.1, -1.3),
        (_WINDOW - 0.4, 0.0, -1.2),
        (far + 0.1, 0.0, -1.0),
        (far + 1.4, 1.0, -1.0),
        (far + 2.8, 1.9, -1.0),
    ]
    return wound(lead, coil(far, _WINDOW, turns - 0.25, -90, 1.05, 2.5), tag, 0.8)
