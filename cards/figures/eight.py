"""The figure-eight on an eye: the strand and the eye, laid up, out."""

from tagend.cards.figures.curve import rounded, rows
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.strand import Course, line

_ASIDE = 1.3  # of either part by the eye, from the middle


def eight_laid(*_: int) -> tuple[Course, ...]:
    """The tag over the standing part, back behind it, and through the loop that the eye holds."""
    standing = rows(x=(-14.0, -3.8, -2.8), y=(_ASIDE, _ASIDE, 1.1))
    tag = rows(
        x=(-2.8, -3.8, -7.2, -7.2, -7.2, -9.8, -9.8, -9.8, -5.0, -5.0, -5.0, -5.0),
        y=(-1.1, -_ASIDE, -_ASIDE, _ASIDE, 4.0, 4.0, _ASIDE, -3.9, -3.9, -_ASIDE, _ASIDE, 4.0),
        z=(-0.2, 0.0, 0.0, 1.6, 0.8, -0.8, -1.6, -0.6, 0.6, 1.6, -1.6, -0.8),
    )
    return line(rounded([*standing, *through(0.0), *tag], 1.0)), eye(0.0)
