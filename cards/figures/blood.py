"""The blood knot: the turns of either side in, its two strands laid up and drawn up out."""

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, pair, turned

_ROOM = 24.0  # for the turns of both sides, laid up
_R = 1.3  # of the turns laid up, from the strand they go round
_GAP = 3.0  # half of it
_WINDOW = 2.2  # half of what shows between the turns, drawn up


def blood_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """Each tag wound outwards round the other strand, brought back and put through the gap.

    Both go round in the same sense. The thick tag goes through the gap from the front, the thin
    one from the back.
    """
    step = pitch(thick + thin, _ROOM, 1.9)
    right, left = _GAP + thick * step, _GAP + thin * step
    end = max(right, left) + 3.0
    return pair(_laid(thick, right, end, 1.6), turned(_laid(thin, left, end, -1.6)))


def _laid(turns: int, far: float, end: float, z: float) -> list[Point]:
    """Return the strand from the left; `z` is its tag's, where it passes the own strand."""
    back = _R + 1.5
    tag = rows(
        x=(far, far + 1.6, far + 1.6, far - 0.5, 1.0, 1.0, 1.0, 1.0),
        y=(_R, _R, back, back, back, _R, -_R, -_R - 2.4),
        z=(0.0, 1.0, 1.0, z, z, z, -z, -z),
    )
    lead = rows(x=(-end, -_GAP, -1.8, _GAP), y=(0.0, 0.0, _R, _R))
    return wound(lead, coil(_GAP, far, turns, 0, _R, _R), tag)


def blood_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """The turns drawn close, each over the other strand and the own one.

    Under pull the turns go over to the way back: the tag, which ran outwards in turns and back
    straight, now runs outwards straight and back in turns, as many, in the other sense.
    """
    right, left = _WINDOW + thick * CLOSE, _WINDOW + thin * CLOSE
    end = max(right, left) + 3.0
    a = wound(
        _core(-end, right, -0.5),
        coil(right, _WINDOW, thick, -90, 1.05, 2.1),
        rows(x=(2.1, 1.8, 0.7, 0.7), y=(0.5, 1.4, 1.4, -2.6), z=(-2.0, -0.8, 0.0, 0.0)),
    )
    b = wound(
        _core(end, -left, 0.5),
        # A quarter turn less: this tag leaves from below, against its turns.
        coil(-left, -_WINDOW, 0.25 - thin, 90, 1.05, 2.1),
        rows(
            x=(-2.2, -1.8, -0.7, -0.7, -0.7),
            y=(-1.05, -1.2, -1.4, 0.0, 2.6),
            z=(0.0, 0.8, 0.6, 0.0, 0.0),
        ),
    )
    return pair(a, b)


def _core(start: float, far: float, z: float) -> list[Point]:
    """Return the strand from its standing part to where its turns begin, all in depth."""
    way = 1 if far > start else -1
    half = way * _WINDOW
    flat = [(start, z), (-half, z), (-way, 2 * z), (way, 2 * z), (half, z)]
    return [
        *((x, 0.0, depth) for x, depth in flat),
        *rows(
            x=(far + way * 0.9, far + way * 0.9, far - way * 0.2),
            y=(0.0, -0.2, 0.3),
            z=(z, 4.4 * z, 4.4 * z),
        ),
    ]


def blood_steps(thick: int, thin: int) -> tuple[Stage, ...]:
    """The thick tag's turns, that tag through the gap, and the same with the thin one."""
    step = pitch(thick + thin, _ROOM, 1.9)
    wound_out: Point = (_GAP + thick * step, _R, 0.0)
    lapped: Point = (-2.0, -_R, 0.0)
    return (
        Stage(((wound_out,), (lapped,)), moves=(0,), count=Count(thick, "heavy")),
        Stage((None, (lapped,)), moves=(0,)),
        Stage((), moves=(1,), count=Count(thin, "light")),
    )


BLOOD = Figure(((blood_laid, blood_steps),), blood_drawn)
