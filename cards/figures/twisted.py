"""The twisted-loop joint: the turns of its bight in, the two strands laid up out."""

from tagend.cards.figures.curve import Point, beside, coil, rows, wound
from tagend.cards.figures.strand import Course, beside_one_another

_SIDE = 0.55  # of either strand from the middle of the two
_R = 1.75  # of the turns, from the middle of what they go round
_PITCH = 2.7


def twisted_laid(_: int, turns: int) -> tuple[Course, ...]:
    """Both strands in one bight, its legs turned round one another, the ends drawn through."""
    far = -turns * _PITCH
    thick = _strand(turns, _SIDE, far - 4.6, 8.6)
    thin = _strand(turns, -_SIDE, far - 3.0, 10.4)
    return beside_one_another(thick, thin)


def _strand(turns: int, side: float, start: float, end: float) -> list[Point]:
    """Return one of two strands side by side, the one that is `side` to the left."""
    far = -turns * _PITCH
    lead = rows(
        x=(start, 0.3, 1.9, 6.6, 6.6, 1.4, -0.3),
        y=(0.0, 0.0, 2.3, 2.3, -2.3, -2.2, -_R),
        z=(0.0, 0.0, 0.0, 0.8, 0.8, 0.0, 0.3),
    )
    tag = rows(
        x=(far + 0.3, far - 1.0, far - 2.8, far - 2.8, far, 3.2, 3.2, 3.2, 5.0, end),
        y=(-_R, -2.1, -2.1, -4.8, -4.8, -4.8, -1.7, 0.0, 0.0, 0.0),
        z=(-0.4, 0.9, 0.9, 0.9, 0.2, 1.2, 1.9, 0.2, -0.6, -0.6),
    )
    lead, tag = beside(lead, side), beside(tag, side)
    along = -1.15 * side
    lead[-1] = (along - 0.4, -_R - 0.3 * side, 0.4)
    tag[0] = (far + along + 0.3, -_R - 0.5 * side, -0.4)
    return wound(lead, coil(along, far + along, -turns, 180, _R, _R), tag, 1.0)
