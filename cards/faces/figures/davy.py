"""The Davy: its strand and the eye, laid up and drawn up out."""

from cards.faces.figures.curve import rounded
from cards.faces.figures.eye import eye, through
from cards.faces.figures.strand import Strand, line


def davy_laid() -> tuple[Strand, ...]:
    """The overhand round the standing part, and the tag back between it and the eye."""
    return _hitch((-9.0, -6.8, -4.6), 2.4, -2.6, -4.8, 1.1)


def davy_drawn() -> tuple[Strand, ...]:
    """The overhand drawn close, and the tag held against the eye."""
    return _hitch((-5.9, -4.6, -3.3), 1.4, -1.4, -2.6, 0.6)


def _hitch(
    across: tuple[float, float, float], top: float, run: float, low: float, reach: float
) -> tuple[Strand, ...]:
    """Return the strand and the eye.

    The tag passes `across` the standing part three times: up over it, down behind it, up over it.
    `run` is the height of its way back from the eye, round which it goes last, as low as `low`.
    """
    first, second, third = across
    corners = [
        (first - 4.4, 0.0, 0.0),
        (first, 0.0, 0.0),
        (second, 0.0, 0.7),
        (third, 0.0, -0.7),
        (third + 0.8, 0.0, 0.2),
        *through(0.0),
        (third + 0.8, run, -0.2),
        (third, run, 0.7),
        (second, run, -0.7),
        (first, run, 0.2),
        (first, 0.0, 1.5),
        (first, top, 0.5),
        (second, top, -0.8),
        (second, 0.0, -1.2),
        (second, run, 1.2),
        (second, low, 0.8),
        (third, low, -0.8),
        (third, run, -1.2),
        (third, 0.0, 1.2),
        (third, max(top, 1.4) + 1.4, 1.0),
    ]
    return line(rounded(corners, reach)), eye(0.0)
