"""The crimped sleeve: its strand, sleeve and eye, before the crimp and after, out."""

from tagend.cards.figures.curve import Point, rounded, rows, smooth
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course, line

_ASIDE = 0.55  # of either leg in the sleeve, from its middle
_FAR, _NEAR = -11.0, -6.4  # the ends of the sleeve
_WIDE = 2.8


def sleeve_laid(*_: int) -> tuple[Course, ...]:
    """The sleeve on the strand, its tag through the eye and back into it."""
    return *_looped(_FAR - 2.6), _tube(_FAR, _NEAR, _WIDE)


def sleeve_steps(*_: int) -> tuple[Stage, ...]:
    """The tag through the eye, and through the sleeve."""
    threaded, out = (-3.4, -1.6, -0.3), (_FAR - 1.0, -_ASIDE, 0.0)
    return Stage(((threaded,),), moves=(0,)), Stage(((out,),), moves=(0,), free=3.0)


def sleeve_crimped(*_: int) -> tuple[Course, ...]:
    """The sleeve with the marks of the pliers, and the tag cut flush."""
    marks = (rows(x=x, y=(-1.1, 0.0, 1.1), z=7.0) for x in (_FAR + 1.5, _NEAR - 1.5))
    bars = (Course(smooth(places), "solid", 0.8) for places in marks)
    return *_looped(_FAR + 0.5), _tube(_FAR, _NEAR, _WIDE), *bars


def _tube(start: float, end: float, wide: float) -> Course:
    tube = smooth(rows(x=(start, (start + end) / 2, end), y=0.0, z=4.0))
    return Course(tube, "outline", wide, first_cut=True, last_cut=True)


def _looped(end: float) -> tuple[Course, ...]:
    loop: list[Point] = [
        *rows(x=(_FAR - 4.0, _NEAR + 0.5, -3.6), y=(_ASIDE, _ASIDE, 1.7), z=(0.0, 0.0, 0.3)),
        *through(0.0),
        *rows(x=(-3.6, _NEAR + 0.5, end), y=(-1.7, -_ASIDE, -_ASIDE), z=(-0.3, 0.0, 0.0)),
    ]
    return line(rounded(loop, 1.2)), eye(0.0)


SLEEVE = Figure(((sleeve_laid, sleeve_steps),), sleeve_crimped, pulled=False)
