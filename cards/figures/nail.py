"""The nail knot and the needle knot: the turns in, fly line and butt laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, rows, smooth, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, line

_LINE = 1.5  # the line's tip in butts, as knots.toml reckons it
_ROOM = 11.0  # for the turns, laid up
_TUBE = 1.75  # of its middle, from the line's
_CORE = -0.6  # deep in the line, which hides what runs there


def nail_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The turns over line, tube and the butt's own run, with the tag put back through the tube."""
    far = turns * pitch(turns, _ROOM, 1.7)
    return _laid(turns, far, far + 3.4, [(far + 7.0, -1.55, 0.0)])


def needle_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The same, with the butt in at the line's end, through its core and out of its side."""
    far = turns * pitch(turns, _ROOM, 1.7)
    hole = far + 3.2
    out = rows(x=(hole, hole - 0.7, hole - 2.2), y=(-0.2, -1.1, -1.55), z=(0.9, 1.2, 0.4))
    return _laid(turns, far, hole + 2.6, [*_core(hole), *out])


def nail_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close."""
    far = turns * CLOSE
    lead = [(far + 6.4, -1.3, 1.0), (far + 1.8, -1.3, 1.0)]
    return _drawn(turns, far, far + 3.4, lead)


def needle_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close, to the hole."""
    far = turns * CLOSE
    hole = far + 2.2
    return _drawn(turns, far, hole + 2.6, [*_core(hole), (hole, -0.2, 0.9)])


def _core(hole: float) -> list[Point]:
    """Return the butt from beyond the line's end, 2.6 from the hole, to where it comes out."""
    return [(hole + 6.0, 0.0, _CORE), (hole + 0.9, 0.0, _CORE)]


def _laid(turns: int, far: float, tip: float, lead: list[Point]) -> tuple[Course, ...]:
    lead = [
        *lead,
        *rows(x=(0.0, -1.3, -1.2, 0.2), y=(-1.55, -1.55, -0.4, 0.8), z=(0.0, 0.3, 2.3, 2.2)),
    ]
    tag = rows(
        x=(far, far + 0.6, far + 2.4, far + 2.4, far + 1.0, -4.6),
        y=(1.8, 3.3, 3.1, _TUBE, _TUBE, _TUBE),
        z=(1.8, 1.4, 0.4, 0.0, 0.0, 0.0),
    )
    butt = wound(lead, coil(0.0, far, -turns, 70, 3.1, 2.1), tag, 0.9)
    tube = smooth(rows(x=(-2.6, 0.0, far + 1.2), y=_TUBE, z=0.5))
    around = Course(tube, "outline", _LINE, first_cut=True, last_cut=True)
    return _fly_line(tip), line(butt, "solid"), around


def _drawn(turns: int, far: float, tip: float, lead: list[Point]) -> tuple[Course, ...]:
    lead = [
        *lead,
        *rows(x=(far - 0.2, -1.5, -1.5, 0.1), y=(-0.5, -0.5, 0.2, 0.6), z=(1.4, 1.5, 3.3, 3.3)),
    ]
    tag = rows(
        x=(far, far + 0.6, far + 1.2, far - 0.2, 0.2, -0.9, -2.6),
        y=(0.6, 2.2, 1.6, 0.2, 0.2, 1.2, 2.2),
        z=(3.2, 1.4, -1.6, -1.6, -1.6, -1.2, -1.2),
    )
    butt = wound(lead, coil(0.0, far, -turns, 90, 1.7, 3.0), tag)
    return _fly_line(tip), line(butt, "solid")


def _fly_line(tip: float) -> Course:
    return Course(smooth(rows(x=(-5.6, 0, tip), y=0)), "outline", _LINE, last_cut=True)


def needle_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """As the nail knot, once the butt has come through the line."""
    return nail_steps(0, turns)


def nail_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The butt along line and tube, its turns, and its end through the tube."""
    far = turns * pitch(turns, _ROOM, 1.7)
    return (
        Stage((None, ((-0.5, -1.55, 0.1),)), moves=(1,)),
        Stage((None, ((far + 1.2, 3.3, 1.1),)), moves=(1,), count=Count(turns, "light")),
        Stage((), moves=(1,)),
    )


NAIL = Figure(((nail_laid, nail_steps),), nail_drawn)
NEEDLE = Figure(((needle_laid, needle_steps),), needle_drawn)
