"""The Albright: the turns in, its two strands laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, coil, pitch, rounded, wound
from tagend.cards.figures.strand import Course, line

_ROOM = 18.0  # for the turns, laid up


def albright_laid(turns: int) -> tuple[Course, ...]:
    """The thin strand wound over itself and both legs of the bight, towards its fold.

    It comes into the bight from behind and leaves it to behind.
    """
    far = turns * pitch(turns, _ROOM, 1.55)
    fold = far + 4.8
    thick = [
        (-5.0, 1.1, 0.0),
        (far + 1.0, 1.1, 0.0),
        (far + 2.0, 1.6, 0.0),
        (fold, 1.6, 0.0),
        (fold, -1.6, 0.0),
        (far + 2.0, -1.6, 0.0),
        (far + 1.0, -1.1, 0.0),
        (-3.2, -1.1, 0.0),
    ]
    lead = [
        (fold + 3.6, -0.55, -1.2),
        (fold, -0.55, -1.2),
        (fold - 2.4, -0.55, 0.0),
        (far, 0.0, 0.0),
        (-1.4, 0.0, -0.2),
        (-1.4, 0.1, -1.9),
        (-0.2, 1.2, -1.7),
    ]
    tag = [
        (far + 0.3, 1.6, -1.3),
        (far + 0.9, 2.5, 0.2),
        (far + 1.9, 0.9, 1.7),
        (far + 2.8, 0.55, 0.6),
        (fold - 1.3, 0.55, -0.2),
        (fold, 0.55, -1.2),
        (fold + 1.9, 0.55, -1.2),
    ]
    turned = coil(0.0, far, turns, -70, 2.1, 1.4)
    return line(rounded(thick, 1.3)), line(wound(lead, turned, tag, 0.8), "solid")


def albright_drawn(turns: int) -> tuple[Course, ...]:
    """The turns drawn close and down to the fold, which keeps them."""
    far = turns * CLOSE
    fold = far + 3.0
    thick = [
        (-4.2, 0.5, 0.0),
        (far + 0.2, 0.5, 0.0),
        (far + 1.5, 1.45, 0.0),
        (fold, 1.45, 0.0),
        (fold, -1.45, 0.0),
        (far + 1.5, -1.45, 0.0),
        (far + 0.2, -0.5, 0.0),
        (-2.4, -0.5, 0.0),
    ]
    lead = [
        (fold + 3.4, -0.55, -1.2),
        (fold, -0.55, -1.2),
        (far + 0.5, 0.0, -0.9),
        (-1.2, 0.0, -0.9),
        (-1.2, 0.1, -2.4),
        (0.0, 0.8, -2.1),
    ]
    tag = [
        (far, 1.55, 0.3),
        (far + 0.7, 1.7, 1.8),
        (far + 1.5, 0.5, 1.3),
        (fold - 1.3, 0.5, 0.0),
        (fold, 0.5, -1.2),
        (fold + 1.8, 0.5, -1.2),
    ]
    turned = coil(0.0, far, turns + 1 / 6, -60, 1.55, 2.2)
    return line(rounded(thick, 0.9)), line(wound(lead, turned, tag, 0.8), "solid")
