"""The doubled blood knot: the turns of either side in, its two strands laid up out."""

from tagend.cards.figures.curve import CLOSE, Point, beside, coil, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Reached, Stage
from tagend.cards.figures.strand import Course, folded, pair, turned

_GAP = 4.0  # half of it
_SIDE = 0.6  # of either leg of the thin strand from the middle of the two
_WINDOW = 2.4  # half of what shows between the turns, drawn up
_CLOSED = 1.5  # of the turns, drawn up
_THICK, _THIN = 1.9, 1.35  # of the turns, from the middle of what they go round


def doubled_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """A blood knot in which the thin strand, folded, winds as two; its fold goes through."""
    right, left = _GAP + 1.7 * thick, _GAP + 2.6 * thin
    end = max(right, left) + 3.4
    lead = _lead(end, _THICK)
    tag = _tag(right, _THICK, _THICK + 1.5, 1.6, (1.5, 0.6))
    a = wound(lead, coil(_GAP, right, thick, 0, _THICK, _THICK), tag, 0.9)
    return pair(a, turned(_folded(thin, end, left)))


def _folded(turns: int, end: float, far: float) -> list[Point]:
    """Return the thin strand as if it came from the left: out, round its fold and back."""
    legs: list[list[Point]] = []
    for side, start in ((_SIDE, end), (-_SIDE, end - 1.6)):
        along = 1.1 * side
        lead = beside(_lead(start, _THIN), side)
        tag = beside(_tag(far, _THIN, _THIN + 2.2, -1.6, (0.6, 1.5)), side)
        # Side by side along the turns, they lie one above the other before and after.
        lead[-1] = (_GAP + along + 0.4, _THIN + 0.5 * side, 0.4)
        tag[0] = (far + along - 0.2, _THIN + 0.5 * side, -0.4)
        legs.append(wound(lead, coil(_GAP + along, far + along, turns, 0, _THIN, _THIN), tag, 1.0))
    return folded(*legs)


def _lead(end: float, high: float) -> list[Point]:
    return rows(
        x=(-end, -_GAP, -2.6, _GAP - 1.2, _GAP + 0.3),
        y=(0.0, 0.0, high, high, high),
        z=(0.0, 0.0, 0.0, 0.0, 0.3),
    )


def _tag(far: float, high: float, back: float, z: float, hole: tuple[float, float]) -> list[Point]:
    """Return corners from the turns back and through the gap, whose hole ends at these heights."""
    return rows(
        x=(far, far + 1.0, far + 2.4, far + 2.4, far - 0.5, 1.4, 1.4, 1.4, 1.4),
        y=(high, high, high, back, back, back, hole[0], -hole[1], -4.2),
        z=(0.0, 0.7, 1.0, 1.0, z, z, z, -z, -z),
    )


def doubled_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """The turns drawn close, those of the fold in pairs; its fold and the thick tag between them.

    As in the blood knot, the turns go over to the way back.
    """
    right, left = _WINDOW + thick * CLOSE, _WINDOW + 2 * thin * CLOSE
    end = max(right, left) + 3.0
    a = wound(
        _core(-end, right, 0.0, -2.0, -3.4),
        coil(right, _WINDOW, thick, -90, _CLOSED, 3.4),
        rows(x=(2.6, 2.1, 1.0, 0.9), y=(0.9, 2.0, 1.8, -3.4), z=(-3.0, -1.4, 1.6, 1.2)),
    )
    legs: list[list[Point]] = []
    for side, start in ((_SIDE, end), (-_SIDE, end - 1.6)):
        along = 0.9 * side
        coiled = coil(left + along, _WINDOW + along, thin - 0.5, -90, _CLOSED, 4.6)
        out = rows(
            x=(_WINDOW - 0.3 + along, _WINDOW - 0.6 + along, _WINDOW - 0.6 + along),
            y=(-1.3, -2.6, -3.6),
            z=(4.4, 2.4, 1.6),
        )
        legs.append(wound(_core(-start, left + along, side, 0.0, -4.6), coiled, out, 0.6))
    return pair(a, turned(folded(*legs)))


def _core(start: float, far: float, y: float, z: float, back: float) -> list[Point]:
    """Return a strand from its standing part to where its turns begin, all in depth.

    It turns below the other strand, which lies in the middle.
    """
    low, half = (-1.4, (z + back) / 2) if y else (0.0, z)
    return rows(
        x=(start, -_WINDOW, 0.0, _WINDOW, far - 0.6, far + 0.9, far + 0.9, far - 0.1),
        y=(y, y, y, y, y, low, low, low / 3 + 0.1),
        z=(z, z, z, z, z, half, back, back),
    )


def doubled_steps(thick: int, thin: int) -> tuple[Stage, ...]:
    """The fold's turns, the fold through the gap, and the same with the thick tag."""
    wound_out = _legs(-_GAP - 2.6 * thin - 1.4, -_THIN, _SIDE)
    through: Reached = ((-1.4 - _SIDE, 2.6, 1.6), (-1.4 + _SIDE, 2.6, 1.6))
    lapped: Reached = ((2.0, _THICK, 0.0),)
    return (
        Stage((lapped, wound_out), moves=(1,), count=Count(thin, "light")),
        Stage((lapped, through), moves=(1,), free=1.6),
        Stage((None, through), moves=(0,), count=Count(thick, "heavy"), free=1.6),
    )


def _legs(x: float, y: float, side: float) -> Reached:
    return (x, y - side, 0.8), (x, y + side, 0.8)


DOUBLED = Figure(((doubled_laid, doubled_steps),), doubled_drawn)
