"""The non-slip loop: the turns in, the strand and the eye out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, rows, wound
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, line

_ROOM = 9.0  # for the turns
_LAID, _DRAWN = (12.4, 2.4), (8.6, 0.35)  # the middle of the eye


def nonslip_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The tag out of the overhand and back, round the standing part and through it again."""
    far = -3.8 - turns * pitch(turns, _ROOM, 1.7)
    lead = [*_into_overhand(far), (-3.2, -2.5, -0.9), (-3.9, -1.2, 0.6)]
    tag = rows(
        x=(far, far - 1.5, far - 1.5, far + 0.5, 1.6, 1.6, 1.6, 3.4, 5.4),
        y=(-1.3, -1.3, -3.7, -3.7, -3.7, 0.0, 1.1, 1.1, 1.1),
        z=(0.0, 1.0, 1.0, -0.4, -0.8, -1.2, 0.0, 1.2, 1.2),
    )
    return line(wound(lead, coil(-3.8, far, -turns, 180, 1.3, 1.3), tag, 1.0)), eye(*_LAID)


def _into_overhand(far: float) -> list[Point]:
    """Return the strand until it has come back through the overhand, and lies below and behind."""
    return [
        *rows(
            x=(far - 3.0, 3.4, 3.4, -2.1, -2.1, -2.1, -0.7, -0.7, -0.7, 3.4, 5.6, 8.0),
            y=(0.0, 0.0, 4.6, 4.6, 0.0, -1.4, -1.4, 0.0, 3.4, 3.4, 3.4, 4.3),
            z=(0.0, 0.0, 0.0, 0.0, 1.1, 0.4, -0.4, -1.2, 0.0, 1.2, 0.6, 0.3),
        ),
        *through(*_LAID),
        *rows(
            x=(8.0, 5.6, 3.4, 0.45, 0.45, 0.45),
            y=(0.6, 2.25, 2.25, 2.25, 0.0, -2.6),
            z=(-0.3, 0.6, 1.2, 0.0, -1.2, -0.8),
        ),
    ]


def nonslip_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close to the overhand, the tag out of it beside the loop.

    The overhand has become a collar round the loop's legs and the tag, and a bend round the
    standing part; the way back lies behind the turns.
    """
    far = -3.0 - turns * CLOSE
    lead = [
        *rows(
            x=(far - 3.4, -2.2, -0.9, 0.0, 0.7, 1.2, 0.9, -0.6, -1.5, -2.1, -1.5, -0.4, 2.0, 4.4),
            y=(0.0, 0.0, 0.3, -0.4, -2.4, -1.3, 2.2, 2.3, 0.5, -1.5, -0.7, 1.0, 1.0, 1.9),
            z=(0.0, 0.0, 0.8, 2.0, 0.9, -2.3, -1.0, 1.4, 2.0, 0.6, -1.4, -0.6, 0.0, 0.3),
        ),
        *through(*_DRAWN),
        *rows(
            x=(4.4, 2.0, 0.4, -0.9, -2.7, -3.1),
            y=(-1.1, 0.0, 0.0, 0.0, 0.4, -0.5),
            z=(-0.3, 0.0, -0.3, -3.0, -2.5, -1.8),
        ),
    ]
    tag = rows(
        x=(far, far, -2.6, -0.9, 0.4, 1.8, 3.6),
        y=(-0.3, 0.6, -0.6, -1.2, -1.05, -1.05, -2.6),
        z=(-2.1, -3.4, -3.9, -3.1, -0.3, 0.2, 0.4),
    )
    turned = coil(-3.0, far, -turns, 270, 1.05, 2.1)
    return line(wound(lead, turned, tag)), eye(*_DRAWN)


def nonslip_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The eye, the tag back through the overhand, its turns, and through the overhand again."""
    far = -3.8 - turns * pitch(turns, _ROOM, 1.7)
    return (
        Stage((((8.0, 0.6, -0.3),),), moves=(0,)),
        Stage((((0.45, -1.9, -0.9),),), moves=(0,)),
        Stage((((far, -1.3, 0.0),),), moves=(0,), count=Count(turns, "light")),
        Stage((((3.2, 1.1, 1.2),),), moves=(0,), free=2.6),
    )


NONSLIP = Figure(((nonslip_laid, nonslip_steps),), nonslip_drawn)
