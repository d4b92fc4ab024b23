"""The non-slip loop: the turns in, the strand and the eye out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, wound
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.strand import Course, line

_ROOM = 9.0  # for the turns
_LAID, _DRAWN = (12.4, 2.4), (8.6, 0.35)  # the middle of the eye


def nonslip_laid(turns: int) -> tuple[Course, ...]:
    """The tag out of the overhand and back, round the standing part and through it again."""
    far = -3.8 - turns * pitch(turns, _ROOM, 1.7)
    lead = [*_into_overhand(far), (-3.2, -2.5, -0.9), (-3.9, -1.2, 0.6)]
    tag = [
        (far, -1.3, 0.0),
        (far - 1.5, -1.3, 1.0),
        (far - 1.5, -3.7, 1.0),
        (far + 0.5, -3.7, -0.4),
        (1.6, -3.7, -0.8),
        (1.6, 0.0, -1.2),
        (1.6, 1.1, 0.0),
        (3.4, 1.1, 1.2),
        (5.4, 1.1, 1.2),
    ]
    return line(wound(lead, coil(-3.8, far, -turns, 180, 1.3, 1.3), tag, 1.0)), eye(*_LAID)


def _into_overhand(far: float) -> list[Point]:
    """Return the strand until it has come back through the overhand, and lies below and behind."""
    return [
        (far - 3.0, 0.0, 0.0),
        (3.4, 0.0, 0.0),
        (3.4, 4.6, 0.0),
        (-2.1, 4.6, 0.0),
        (-2.1, 0.0, 1.1),
        (-2.1, -1.4, 0.4),
        (-0.7, -1.4, -0.4),
        (-0.7, 0.0, -1.2),
        (-0.7, 3.4, 0.0),
        (3.4, 3.4, 1.2),
        (5.6, 3.4, 0.6),
        (8.0, 4.3, 0.3),
        *through(*_LAID),
        (8.0, 0.6, -0.3),
        (5.6, 2.25, 0.6),
        (3.4, 2.25, 1.2),
        (0.45, 2.25, 0.0),
        (0.45, 0.0, -1.2),
        (0.45, -2.6, -0.8),
    ]


def nonslip_drawn(turns: int) -> tuple[Course, ...]:
    """The turns drawn close to the overhand, the tag out of it beside the loop.

    The overhand has become a collar round the loop's legs and the tag, and a bend round the
    standing part; the way back lies behind the turns.
    """
    far = -3.0 - turns * CLOSE
    lead = [
        (far - 3.4, 0.0, 0.0),
        (-2.2, 0.0, 0.0),
        (-0.9, 0.3, 0.8),
        (0.0, -0.4, 2.0),
        (0.7, -2.4, 0.9),
        (1.2, -1.3, -2.3),
        (0.9, 2.2, -1.0),
        (-0.6, 2.3, 1.4),
        (-1.5, 0.5, 2.0),
        (-2.1, -1.5, 0.6),
        (-1.5, -0.7, -1.4),
        (-0.4, 1.0, -0.6),
        (2.0, 1.0, 0.0),
        (4.4, 1.9, 0.3),
        *through(*_DRAWN),
        (4.4, -1.1, -0.3),
        (2.0, 0.0, 0.0),
        (0.4, 0.0, -0.3),
        (-0.9, 0.0, -3.0),
        (-2.7, 0.4, -2.5),
        (-3.1, -0.5, -1.8),
    ]
    tag = [
        (far, -0.3, -2.1),
        (far, 0.6, -3.4),
        (-2.6, -0.6, -3.9),
        (-0.9, -1.2, -3.1),
        (0.4, -1.05, -0.3),
        (1.8, -1.05, 0.2),
        (3.6, -2.6, 0.4),
    ]
    turned = coil(-3.0, far, -turns, 270, 1.05, 2.1)
    return line(wound(lead, turned, tag, 0.8)), eye(*_DRAWN)
