"""The slim beauty: the turns of its thin strand in, both strands laid up out."""

from tagend.cards.figures.curve import Point, beside, coil, rounded, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, folded, pair

_SIDE = 0.55  # of either leg of the thin strand from the middle of the two
_PASSES, _BACK = 2, 3  # of the overhand, and of the turns over the others: as in knots.toml
_OUT_R, _BACK_R = 1.3, 2.8
_GAP = -5.8  # where the thin strand's turns begin; the thick one's begin at 0
_FAR = 2.2 * _PASSES
_PITCH, _CLOSE = 3.0, 2.3  # of the turns out; those back are wider


def slim_threaded(*_: int) -> tuple[Course, ...]:
    """The thick overhand drawn to an eight, the thin strand, folded, through both its holes.

    It goes in over the eight and out under it, then along the thick strand.
    """
    through = rows(
        x=(10.0, 7.4, 6.0, 1.6, 0.0, -1.6, -6.0, -7.4, -8.8, -11.6),
        y=(-1.0, -1.0, *[-2.35] * 6, 2.4, 2.4),
        z=(0.0, 1.0, 1.6, 0.3, 0.0, -0.3, -1.5, -1.2, -1.2, -0.6),
    )
    out, back = (rounded(beside(through, side), 0.8) for side in (_SIDE, -_SIDE))
    return pair(_eight(), folded(out, [(10.9, *back[0][1:]), *back[1:]]))


def _eight() -> list[Point]:
    """Return the double overhand half drawn: its loop once round the middle of its own turns."""
    turns = _PASSES - 0.5
    lead = rows(x=(-12.6, -4.3, -2.8), y=0.7, z=(0.0, 0.0, -0.3))
    loop = rows(
        x=(3.3, 6.0, 6.0, 1.6, 1.0, 0.6, 0.3, 0.0, -0.3, -0.6, -1.0, -1.6, -6.0, -6.0, -3.3),
        y=(-0.7, -0.7, -5.0, -5.0, -4.0, -2.0, 1.7, 2.0, 1.7, -2.0, -4.0, -5.0, -5.0, -0.7, -0.7),
        z=(0.2, 0.0, 0.0, 0.6, 2.0, 2.4, 2.0, 0.0, -2.0, -2.4, -2.0, -0.6, 0.0, 0.0, 0.2),
    )
    tag = rows(x=(2.8, 4.3, 8.4), y=0.7)
    first, second = (coil(-2.8, 2.8, -turns, angle, 0.7, 0.9) for angle in (0, 180))
    half = wound(lead, first, loop, 0.8)
    return [*half[:-1], *second[1:-1], *rounded(tag, 0.8)[1:]]


def slim_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The thin fold wound along the thick strand and back, and put through the gap.

    The gap is between it and the thick strand, by the overhand.
    """
    return _wound(turns, _PITCH)


def slim_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close."""
    return _wound(turns, _CLOSE)


def _wound(turns: int, pitch: float) -> tuple[Course, ...]:
    back = min(_BACK, turns // 2)
    left = _GAP - (turns - back) * pitch
    legs = (_leg(side, turns - back, back, left) for side in (_SIDE, -_SIDE))
    return pair(_thick(left), folded(*legs))


def _thick(left: float) -> list[Point]:
    """Return the strand from the left, in an overhand whose passes lie over it and its tag."""
    lead = rows(
        x=(left - 4.0, _GAP, _GAP + 1.4, _FAR + 1.4, _FAR + 1.3, _FAR),
        y=(0.0, 0.0, -1.65, -1.65, -0.4, 0.8),
        z=(0.0, 0.0, 0.0, 0.3, 2.3, 2.2),
    )
    tag = rows(
        x=(0.0, -0.5, -1.2, -1.2, 0.6, _FAR + 3.4),
        y=(1.7, 2.9, 2.7, 1.65, 1.65, 1.65),
        z=(1.8, 1.4, 0.4, 0.0, 0.0, 0.0),
    )
    return wound(lead, coil(_FAR, 0.0, -_PASSES, 70, 2.8, 2.2), tag, 0.9)


def _lead(side: float) -> list[Point]:
    """Return corners of one leg of the thin strand, until it has come out beside the thick one."""
    return rows(
        x=(_FAR + 5.2 + 1.5 * side, -1.7 - 0.6 * side, -2.5 - 0.6 * side, _GAP + 1.2),
        y=(-side, -side, 1.4 - side, 1.4 - side),
    )


def _leg(side: float, out: int, back: int, left: float) -> list[Point]:
    along = 1.05 * side
    end = left + along
    # They turn back behind the thick strand: a quarter more out, a quarter less back.
    outwards = coil(_GAP + along, end, -out - 0.25, 0, _OUT_R, _OUT_R)
    inwards = coil(end, _GAP + along, 0.25 - back, -90, _BACK_R, _BACK_R)
    hole = _GAP + 1.9 + 0.9 * along
    tag = rows(
        x=(_GAP + along, hole, hole, hole, hole, hole),
        y=(_BACK_R, 2.3 + side, 0.9, -0.9, -2.2, -3.2),
        z=(-0.5, -2.1, -1.9, 1.4, 1.4, 0.8),
    )
    lead = [*_lead(side), (_GAP + 0.3 + along, _OUT_R - 0.8 * side, -side)]
    return wound(lead, [*outwards[:-1], *inwards[1:]], tag)


def threaded_steps(*_: int) -> tuple[Stage, ...]:
    """The eight, drawn from both its ends, and the fold through it."""
    threaded = (-10.2, 2.4 - _SIDE, -0.9), (-10.2, 2.4 + _SIDE, -0.9)
    return (
        Stage((None, ()), moves=(0, ~0), count=Count(_PASSES, what="passes")),
        Stage((None, threaded), moves=(1,)),
    )


def slim_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The turns out, and those back with the fold through the gap."""
    back = min(_BACK, turns // 2)
    out = turns - back
    end = _GAP - out * _PITCH * (out - 0.25) / (out + 0.25)
    outwards = tuple((end + 1.05 * side, 0.0, _OUT_R) for side in (_SIDE, -_SIDE))
    hole = tuple((_GAP + 1.9 + 0.95 * side, -1.8, 1.4) for side in (_SIDE, -_SIDE))
    return (
        Stage((None, outwards), moves=(1,), count=Count(out)),
        Stage((None, hole), moves=(1,), count=Count(back), free=1.6),
    )


SLIM = Figure(((slim_threaded, threaded_steps), (slim_laid, slim_steps)), slim_drawn)
