"""The palomar: its strand and the eye, laid up and drawn up out."""

from math import pi

from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.curve import Point, beside, coil, rounded, rows, wound
from tagend.cards.figures.eye import eye
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course, line

_SIDE = 0.5  # of either leg from the middle of the two
_R = 2.2  # of the eye, which takes two
_EYE = 7.0  # where it stands, laid up; drawn up, the knot is measured from it


def palomar_laid(*_: int) -> tuple[Course, ...]:
    """The doubled end through the eye and in an overhand round itself, its fold over the fly."""
    upper, lower = (rounded(beside(_laid(start), side), 1.1) for side, start in _legs(-8.0))
    fold = [
        upper[-1],
        *rows(
            x=(_EYE + 4.4, _EYE + 4.4, _EYE + 4.4, _EYE + 7.2, _EYE + 7.2, _EYE + 7.2),
            y=(upper[-1][1], 0.0, 2.2, 2.2, 0.0, lower[-1][1]),
            z=(0.4, 1.2, 0.6, -0.6, -1.2, -0.4),
        ),
        lower[-1],
    ]
    return _folded(upper, fold, lower), eye(_EYE, 0.0, _R, 7.0)


def _legs(start: float) -> tuple[tuple[float, float], ...]:
    """Return the side of either leg, and where it begins: the standing part, then the tag."""
    return (_SIDE, start), (-_SIDE, start + 1.8)


def _folded(upper: list[Point], fold: list[Point], lower: list[Point]) -> Course:
    """Return the strand along one leg, round its fold, and back along the other."""
    return line([*upper[:-1], *rounded(fold, 1.1)[1:-1], *reversed(lower[:-1])])


def _laid(start: float) -> list[Point]:
    return [
        (start, 0.0, 0.0),
        (2.6, 0.0, 0.0),
        *_through(_EYE),
        *rows(
            x=(2.6, -3.6, -3.6, -3.6, -0.3, -0.3, -0.3, -0.3, 6.0),
            y=(-3.1, -3.1, 0.0, 2.5, 2.5, -0.2, -3.0, -5.9, -5.9),
            z=(0.0, 0.0, 1.4, 0.6, -0.9, -1.8, 2.0, 0.4, 0.4),
        ),
    ]


def _through(x: float) -> list[Point]:
    """Return corners of the middle of two strands, round the near side of the eye and back."""
    return rows(x=(x - 2.7, x, x, x - 2.7), y=(1.0, 1.0, -1.0, -1.0), z=(1.0, 0.8, -0.8, -1.0))


def palomar_drawn(*_: int) -> tuple[Course, ...]:
    """The overhand drawn close, and the fold round all four legs between it and the eye."""
    upper, lower = (_drawn(side, start) for side, start in _legs(-13.4))
    fold = [
        upper[-1],
        *rows(
            x=(-4.5, -4.4, -4.2, -3.5, -3.4, -3.4),
            y=(upper[-1][1], 0.0, 2.1, 2.1, 0.0, lower[-1][1]),
            z=(1.0, 2.2, 0.8, -1.6, -4.4, -2.0),
        ),
        lower[-1],
    ]
    return _folded(upper, fold, lower), eye(0.0, 0.0, _R)


def _drawn(side: float, start: float) -> list[Point]:
    """Return one of two strands side by side, the one that is `side` to the left."""
    along = 1.1 * side
    low = side - 2.1
    lead = [
        (start, side, 0.0),
        (-4.0, side, 0.0),
        *beside(_through(0.0), side),
        *rows(
            x=(-4.6, -8.4 + along, -9.5 + along, -9.6 + along),
            y=(-0.4 - side, -0.4 - side, -0.7, -1.5),
            z=(-2.8, -2.8, -2.4, -1.4),
        ),
    ]
    tag = rows(
        x=(-7.0 + along, -6.8 + along, -6.0, -5.2),
        y=(-1.5, low, low, low),
        z=(-1.0, -0.3, 0.2, 0.4),
    )
    return wound(lead, coil(-9.6 + along, -7.0 + along, -1.05, 225, 1.7, 1.7), tag)


def palomar_steps(*_: int) -> tuple[Stage, ...]:
    """The fold through the eye, in an overhand, and over the fly."""
    eyed = (0.5, -3.1 - _SIDE, 0.0), (0.5, -3.1 + _SIDE, 0.0)
    tied = (-0.3 + _SIDE, -4.6, 1.0), (-0.3 - _SIDE, -4.6, 1.0)
    over = Stage((), arrows=(Arrow(_EYE + 4.0, 2.9, pi),))
    return Stage((eyed,), moves=(0,)), Stage((tied,), moves=(0,)), over


PALOMAR = Figure(((palomar_laid, palomar_steps),), palomar_drawn)
