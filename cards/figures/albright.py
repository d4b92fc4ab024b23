"""The Albright: the turns in, its two strands laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, coil, pitch, rounded, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, pair

_ROOM = 18.0  # for the turns, laid up


def albright_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The thin strand wound over itself and both legs of the bight, towards its fold.

    It comes into the bight from behind and leaves it to behind.
    """
    far = turns * pitch(turns, _ROOM, 1.55)
    fold = far + 4.8
    thick = rows(
        x=(-5.0, far + 1.0, far + 2.0, fold, fold, far + 2.0, far + 1.0, -3.2),
        y=(1.1, 1.1, 1.6, 1.6, -1.6, -1.6, -1.1, -1.1),
    )
    lead = rows(
        x=(fold + 3.6, fold, fold - 2.4, far, -1.4, -1.4, -0.2),
        y=(-0.55, -0.55, -0.55, 0.0, 0.0, 0.1, 1.2),
        z=(-1.2, -1.2, 0.0, 0.0, -0.2, -1.9, -1.7),
    )
    tag = rows(
        x=(far + 0.3, far + 0.9, far + 1.9, far + 2.8, fold - 1.3, fold, fold + 1.9),
        y=(1.6, 2.5, 0.9, 0.55, 0.55, 0.55, 0.55),
        z=(-1.3, 0.2, 1.7, 0.6, -0.2, -1.2, -1.2),
    )
    turned = coil(0.0, far, turns, -70, 2.1, 1.4)
    return pair(rounded(thick, 1.3), wound(lead, turned, tag))


def albright_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close and down to the fold, which keeps them."""
    far = turns * CLOSE
    fold = far + 3.0
    thick = rows(
        x=(-4.2, far + 0.2, far + 1.5, fold, fold, far + 1.5, far + 0.2, -2.4),
        y=(0.5, 0.5, 1.45, 1.45, -1.45, -1.45, -0.5, -0.5),
    )
    lead = rows(
        x=(fold + 3.4, fold, far + 0.5, -1.2, -1.2, 0.0),
        y=(-0.55, -0.55, 0.0, 0.0, 0.1, 0.8),
        z=(-1.2, -1.2, -0.9, -0.9, -2.4, -2.1),
    )
    tag = rows(
        x=(far, far + 0.7, far + 1.5, fold - 1.3, fold, fold + 1.8),
        y=(1.55, 1.7, 0.5, 0.5, 0.5, 0.5),
        z=(0.3, 1.8, 1.3, 0.0, -1.2, -1.2),
    )
    turned = coil(0.0, far, turns + 1 / 6, -60, 1.55, 2.2)
    return pair(rounded(thick, 0.9), wound(lead, turned, tag))


def albright_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The thin end in and along the legs, its turns, and out as it came in."""
    far = turns * pitch(turns, _ROOM, 1.55)
    return (
        Stage((None, ((-1.0, 0.0, -0.1),)), moves=(1,), free=5.0),
        Stage((None, ((far + 0.9, 2.4, 0.2),)), moves=(1,), count=Count(turns, "light")),
        Stage((None, ((far + 5.6, 0.55, -1.2),)), moves=(1,), free=3.0),
    )


ALBRIGHT = Figure(((albright_laid, albright_steps),), albright_drawn)
