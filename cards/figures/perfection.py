"""The perfection loop: its strand with two loops laid up, and one drawn through the other."""

from math import pi

from msgspec import Struct

from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.curve import Point, rounded, rows
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course, line


def perfection_laid(*_: int) -> tuple[Course, ...]:
    """Loop one behind the standing part, loop two in front of it, and the tag between them."""
    over = rows(x=(1.2, 1.2, -2.35, -2.35), y=(2.0, 5.4, 5.4, 0.6), z=(2.5, 2.5, 2.5, 1.5))
    levels = _Levels(bottom=-1.6, one=0.6, two=5.4, tag=3.0, top=7.6, neck=0.0)
    return _loop(-6.5, levels, over, 1.4)


def perfection_through(*_: int) -> tuple[Course, ...]:
    """Loop two drawn back through loop one, over the tag."""
    return _drawn(_Levels(bottom=-1.6, one=0.6, two=2.6, tag=4.6, top=7.2, neck=8.8), 1.4)


def perfection_drawn(*_: int) -> tuple[Course, ...]:
    """The same drawn close."""
    return _drawn(_Levels(bottom=-1.0, one=0.3, two=1.5, tag=2.7, top=5.2, neck=6.7), 0.7)


def perfection_steps(*_: int) -> tuple[Stage, ...]:
    """Loop one; loop two; the tag between them."""
    behind = ((1.6, 2.2, -0.2),)
    return (
        Stage((((-0.6, 1.2, -0.3),),), moves=(0,)),
        Stage((behind,), moves=(0,)),
        Stage((), moves=(0,)),
    )


def through_steps(*_: int) -> tuple[Stage, ...]:
    """Loop two through loop one."""
    return (Stage((), arrows=(Arrow(-14.2, -1.75, pi),)),)


class _Levels(Struct, frozen=True):
    """How high the parts lie that go across: the bends of both loops, the tag, and the top."""

    bottom: float
    one: float
    two: float
    tag: float
    top: float
    neck: float  # of the loop that is drawn through


def _drawn(at: _Levels, reach: float) -> tuple[Course, ...]:
    neck = at.neck
    through = rows(
        x=(1.2, -1.2, -1.2, -1.2, -1.1, 0.5, 0.5, -0.8),
        y=(at.two, at.two, at.tag + 0.4, at.top, neck, neck + 1.8, neck + 3.8, neck + 5.2),
        z=(1.2, 2.0, 2.6, -1.9, -1.2, -0.6, 0.0, 0.0),
    )
    back = rows(
        x=(-2.7, -4.0, -4.0, -2.4, -2.35, -2.35, -2.35),
        y=(neck + 5.2, neck + 3.8, neck + 1.8, neck, at.top, at.tag + 0.4, at.one),
        z=(0.0, 0.0, -0.6, -1.2, -1.9, 2.6, 1.5),
    )
    return _loop(-6.0, at, [*through, *back], reach)


def _loop(start: float, at: _Levels, two: list[Point], reach: float) -> tuple[Course, ...]:
    """Return the strand: loop one up to the top, loop two, and the tag across at its height.

    The corners stand as the knot is tied, the standing part below; the figure lies on its side.
    """
    one, low = at.one, at.bottom
    corners = [
        *rows(
            x=(0.0, 0.0, -3.6, -3.6, -1.2, 0.0, 1.2),
            y=(start, at.top, at.top, one, one, one, one),
            z=(0.0, 0.0, 0.0, 0.0, -1.2, -1.3, 0.0),
        ),
        *two,
        *rows(
            x=(-2.35, -1.2, 1.2, 2.5, 2.5, -5.4),
            y=(low, low, low, low, at.tag, at.tag),
            z=(0.2, -1.0, -1.0, 0.0, 1.1, 1.1),
        ),
    ]
    return (line(rounded([(-y, x, z) for x, y, z in corners], reach)),)


PERFECTION = Figure(
    ((perfection_laid, perfection_steps), (perfection_through, through_steps)), perfection_drawn
)
