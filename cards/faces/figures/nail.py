"""The nail knot: the turns in, fly line and butt laid up and drawn up out."""

from cards.faces.figures.curve import CLOSE, coil, pitch, smooth, wound
from cards.faces.figures.strand import Strand, line

_LINE = 1.5  # the line's tip in butts, as knots.toml reckons it
_ROOM = 11.0  # for the turns, laid up


def nail_laid(turns: int) -> tuple[Strand, ...]:
    """The turns over the line, the tag and the butt's own run, with the tag put back under."""
    far = turns * pitch(turns, _ROOM, 1.7)
    lead = [
        (far + 7.0, -1.55, 0.0),
        (0.0, -1.55, 0.0),
        (-1.3, -1.55, 0.3),
        (-1.2, -0.4, 2.3),
        (0.2, 0.8, 2.2),
    ]
    tag = [
        (far, 1.6, 1.8),
        (far + 0.6, 2.9, 1.4),
        (far + 2.0, 2.7, 0.4),
        (far + 2.0, 1.55, 0.0),
        (far - 0.6, 1.55, 0.0),
        (-3.6, 1.55, 0.0),
    ]
    butt = wound(lead, coil(0.0, far, -turns, 70, 2.7, 2.1), tag, 0.9)
    return _fly_line(far), line(butt, "solid")


def nail_drawn(turns: int) -> tuple[Strand, ...]:
    """The turns drawn close."""
    far = turns * CLOSE
    lead = [
        (far + 6.4, -1.3, 1.0),
        (far + 1.8, -1.3, 1.0),
        (far - 0.2, -0.5, 1.4),
        (-1.5, -0.5, 1.5),
        (-1.5, 0.2, 3.3),
        (0.1, 0.6, 3.3),
    ]
    tag = [
        (far, 0.6, 3.2),
        (far + 0.6, 2.2, 1.4),
        (far + 1.2, 1.6, -1.6),
        (far - 0.2, 0.2, -1.6),
        (0.2, 0.2, -1.6),
        (-0.9, 1.2, -1.2),
        (-2.6, 2.2, -1.2),
    ]
    butt = wound(lead, coil(0.0, far, -turns, 90, 1.7, 3.0), tag, 0.8)
    return _fly_line(far), line(butt, "solid")


def _fly_line(far: float) -> Strand:
    return Strand(
        smooth([(-4.6, 0, 0), (0, 0, 0), (far + 3.4, 0, 0)]), "outline", _LINE, last_cut=True
    )
