"""The doubled blood knot: the turns of either side in, its two strands laid up out."""

from tagend.cards.figures.curve import Point, beside, coil, rows, wound
from tagend.cards.figures.strand import Course, folded, pair, turned

_GAP = 4.0  # half of it
_SIDE = 0.6  # of either leg of the thin strand from the middle of the two
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
