"""The twisted-loop joint: the turns of its bight in, the two strands laid up out."""

from tagend.cards.figures.curve import Point, beside, coil, smooth, wound
from tagend.cards.figures.strand import Course

_SIDE = 0.55  # of either strand from the middle of the two
_R = 1.75  # of the turns, from the middle of what they go round
_PITCH = 2.7


def twisted_laid(turns: int) -> tuple[Course, ...]:
    """Both strands in one bight, its legs turned round one another, the ends drawn through."""
    far = -turns * _PITCH
    thick = _strand(turns, _SIDE, far - 4.6, 8.6)
    thin = _strand(turns, -_SIDE, far - 3.0, 10.4)
    return (
        Course(smooth(thick), "outline", last_cut=True),
        Course(smooth(thin), "solid", first_cut=True),
    )


def _strand(turns: int, side: float, start: float, end: float) -> list[Point]:
    """Return one of two strands side by side, the one that is `side` to the left."""
    far = -turns * _PITCH
    lead = [
        (start, 0.0, 0.0),
        (0.3, 0.0, 0.0),
        (1.9, 2.3, 0.0),
        (6.6, 2.3, 0.8),
        (6.6, -2.3, 0.8),
        (1.4, -2.2, 0.0),
        (-0.3, -_R, 0.3),
    ]
    tag = [
        (far + 0.3, -_R, -0.4),
        (far - 1.0, -2.1, 0.9),
        (far - 2.8, -2.1, 0.9),
        (far - 2.8, -4.8, 0.9),
        (far, -4.8, 0.2),
        (3.2, -4.8, 1.2),
        (3.2, -1.7, 1.9),
        (3.2, 0.0, 0.2),
        (5.0, 0.0, -0.6),
        (end, 0.0, -0.6),
    ]
    lead, tag = beside(lead, side), beside(tag, side)
    along = -1.15 * side
    lead[-1] = (along - 0.4, -_R - 0.3 * side, 0.4)
    tag[0] = (far + along + 0.3, -_R - 0.5 * side, -0.4)
    return wound(lead, coil(along, far + along, -turns, 180, _R, _R), tag, 1.0)
