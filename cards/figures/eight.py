"""The figure-eight and the davy on an eye: the strand and the eye, laid up and drawn up, out."""

from tagend.cards.figures.curve import Point, rounded, rows
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course, line

_ASIDE = 1.3  # of either part by the eye, from the middle
_CLOSE = 0.92  # drawn up


def eight_laid(*_: int) -> tuple[Course, ...]:
    """The tag over the standing part, back behind it, and through the loop that the eye holds."""
    tag = rows(
        x=(-7.2, -7.2, -7.2, -9.8, -9.8, -9.8, -5.0, -5.0, -5.0, -5.0),
        y=(-_ASIDE, _ASIDE, 4.0, 4.0, _ASIDE, -3.9, -3.9, -_ASIDE, _ASIDE, 4.0),
        z=(0.0, 1.6, 0.8, -0.8, -1.6, -0.6, 0.6, 1.6, -1.6, -0.8),
    )
    return _on_eye(-14.0, _ASIDE, tag)


def eight_drawn(*_: int) -> tuple[Course, ...]:
    """The same drawn close."""
    tag = rows(
        x=(-4.7, -4.7, -4.7, -6.2, -6.2, -6.2, -3.2, -3.2, -3.2, -3.2),
        y=(-_CLOSE, _CLOSE, 1.9, 1.9, _CLOSE, -1.9, -1.9, -_CLOSE, _CLOSE, 3.2),
        z=(0.0, 1.9, 0.9, -0.9, -1.9, -0.6, 0.6, 1.9, -1.9, -0.8),
    )
    return _on_eye(-9.0, _CLOSE, tag)


def eight_steps(*_: int) -> tuple[Stage, ...]:
    """The tag round the standing part, and through the loop by the eye."""
    return Stage((((-9.8, -1.0, -1.1),),), moves=(0,)), Stage((), moves=(0,))


def davy_laid(*_: int) -> tuple[Course, ...]:
    """An overhand of the tag round the standing part, and the tag again between it and the eye."""
    tag = rows(
        x=(-9.2, -9.2, -9.2, -6.6, -6.6, -6.6, -6.6, -4.0, -4.0, -4.0, -4.0),
        y=(-_ASIDE, _ASIDE, 3.9, 3.9, _ASIDE, -_ASIDE, -3.9, -3.9, -_ASIDE, _ASIDE, 4.0),
        z=(0.0, 1.6, 0.8, -0.8, -1.6, 1.6, 0.8, -0.8, -1.6, 1.6, 0.8),
    )
    return _on_eye(-14.0, _ASIDE, tag)


def davy_drawn(*_: int) -> tuple[Course, ...]:
    """The same drawn close."""
    tag = rows(
        x=(-6.2, -6.2, -6.2, -4.7, -4.7, -4.7, -4.7, -3.2, -3.2, -3.2, -3.2),
        y=(-_CLOSE, _CLOSE, 1.9, 1.9, _CLOSE, -_CLOSE, -1.9, -1.9, -_CLOSE, _CLOSE, 3.2),
        z=(0.0, 1.9, 0.9, -0.9, -1.9, 1.9, 0.9, -0.9, -1.9, 1.9, 0.8),
    )
    return _on_eye(-9.0, _CLOSE, tag)


def davy_steps(*_: int) -> tuple[Stage, ...]:
    """The overhand, and the tag between it and the eye."""
    return Stage((((-6.6, -2.6, 1.2),),), moves=(0,)), Stage((), moves=(0,))


def _on_eye(start: float, aside: float, tag: list[Point]) -> tuple[Course, ...]:
    """Return the strand through an eye, its parts so far to either side, and on as the tag goes."""
    standing = rows(x=(start, -3.2, -2.8), y=(aside, aside, (aside + 0.9) / 2))
    back = rows(x=(-2.8, -3.2), y=(-(aside + 0.9) / 2, -aside), z=(-0.2, 0.0))
    places = [*standing, *through(0.0), *back, *tag]
    return line(rounded(places, 1.0 if aside > 1 else 0.6)), eye(0.0)


DAVY = Figure(((davy_laid, davy_steps),), davy_drawn)
EIGHT = Figure(((eight_laid, eight_steps),), eight_drawn)
