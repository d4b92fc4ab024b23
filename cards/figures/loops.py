"""Loop to loop: two loops apart, one over the other, joined, and drawn together."""

from math import pi

from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.curve import Point, rounded, rows, smooth
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course, Look, line


def loops_apart(*_: int) -> tuple[Course, ...]:
    """The loops before they meet."""
    return _joined(4.4, 2.6, 7.0)


def apart_steps(*_: int) -> tuple[Stage, ...]:
    """The lower loop on its way over the upper one."""
    return (Stage((), arrows=(Arrow(2.1, 0.0, pi),)),)


def loops_slipped(*_: int) -> tuple[Course, ...]:
    """The lower loop over the upper one, and its piece turned back into that.

    The piece goes in over the upper loop's side and out under its tip.
    """
    reach = 6.4
    piece = rows(
        x=(reach + 6.0, reach + 1.0, reach, 5.2, 5.2, 5.2, 3.0, 3.0),
        y=(0.0, 0.0, 0.0, 0.0, 2.6, 7.2, 7.2, 5.0),
        z=(0.0, -0.6, -1.0, 0.8, 1.6, 1.6, 1.6, 1.6),
    )
    ring = rows(
        x=(3.55, 3.55, 1.2, 0.0, -2.2, -4.4, -4.4, -2.2, 0.0, 1.2, 2.45, 2.45),
        y=(4.6, -0.6, -0.6, -1.3, -2.6, -2.6, 2.6, 2.6, 1.3, 0.6, 0.6, 4.8),
        z=(1.6, 1.2, 1.2, 1.0, 0.2, -0.9, -0.9, 0.2, 1.0, 1.2, 1.2, 1.6),
    )
    return (
        line(rounded(_loop(reach, 2.6), 1.1)),
        line(rounded([*piece, *ring], 1.1), "solid"),
        _bar(-reach - 2.8, "outline"),
        Course(smooth(rows(x=(1.6, 4.4), y=4.8, z=2.6)), "solid", 1.3),
    )


def slipped_steps(*_: int) -> tuple[Stage, ...]:
    """The far end of the lower piece through the upper loop."""
    return (Stage((), moves=(~1,)),)


def loops_laid(*_: int) -> tuple[Course, ...]:
    """The loops joined and still open."""
    return _joined(4.4, 2.6)


def loops_drawn(*_: int) -> tuple[Course, ...]:
    """The loops seated square, like a reef knot."""
    return _joined(2.7, 1.7)


def _joined(reach: float, wide: float, apart: float = 0.0) -> tuple[Course, ...]:
    """Return two loops, each `reach` beyond the middle, and a bar for the knot of each."""
    upper = [(x - apart, y, z) for x, y, z in _loop(reach, wide)]
    lower = [(-x, y, -z) for x, y, z in upper]
    knot = reach + 2.8 + apart
    return (
        line(rounded(upper, 1.1)),
        line(rounded(lower, 1.1), "solid"),
        _bar(-knot, "outline"),
        _bar(knot, "solid"),
    )


def _bar(x: float, look: Look) -> Course:
    """Return the sign of the knot that a loop was tied with."""
    bar = smooth(rows(x=x, y=(1.4, -1.4), z=1.6))
    return Course(bar, look, 1.3, first_cut=True, last_cut=True)


def _loop(reach: float, wide: float) -> list[Point]:
    """Return corners of the loop whose strand comes from the left.

    Its legs go over the other's tip, under its legs, and its own tip over them both.
    """
    knot = -reach - 2.8
    leg = rows(
        x=(knot + 0.5, -reach, -0.4 * reach, 0.0, 0.5 * reach, reach),
        y=(0.55, 0.55, 0.7, (0.6 + wide) / 2, wide, wide),
        z=(0.2, 1.0, -0.6, -1.0, -0.2, 0.9),
    )
    back = [(x, -y, z) for x, y, z in reversed(leg)]
    return [(knot - 3.6, 0.0, 0.0), (knot - 0.6, 0.1, 0.0), *leg, *back, (knot, -0.6, 0.2)]


def loops_steps(*_: int) -> tuple[Stage, ...]:
    """The lower loop over the upper one, and all that hangs on it through that."""
    return (Stage((), moves=(~1,)),)


LOOPS = Figure(
    ((loops_laid, loops_steps),),
    loops_drawn,
    opening=((loops_apart, apart_steps), (loops_slipped, slipped_steps)),
)
