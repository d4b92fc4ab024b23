"""The twisted-loop joint: the turns of its bight in, the two strands laid up out."""

from tagend.cards.figures.curve import Point, beside, coil, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, beside_one_another

_SIDE = 0.55  # of either strand from the middle of the two
_R = 1.75  # of the turns, from the middle of what they go round
_PITCH, _CLOSE = 2.7, 2.15  # of the turns, laid up and drawn up


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


def twisted_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close, the ends behind them and through what is left of the bight."""
    far = -turns * _CLOSE
    thick, thin = _close(turns, _SIDE, far - 4.6, 6.4), _close(turns, -_SIDE, far - 3.2, 8.0)
    return beside_one_another(thick, thin)


def _close(turns: int, side: float, start: float, end: float) -> list[Point]:
    """Return one of two strands as `_strand` does, then turned over about their length."""
    far = -turns * _CLOSE
    lead = beside(
        rows(
            x=(start, 0.2, 1.6, 4.2, 4.2, 1.4, -0.3),
            y=(0.0, 0.0, 2.2, 2.2, -2.2, -2.2, -_R),
            z=(0.0, 0.0, 0.0, 0.8, 0.8, 0.0, 0.3),
        ),
        side,
    )
    tag = beside(
        rows(
            x=(far + 0.3, far - 1.3, far - 1.3, 1.5, 3.1, end),
            y=(-_R, -_R, 0.0, 0.0, 0.0, 0.0),
            z=(-0.4, 1.0, 3.6, 3.6, -0.6, -0.6),
        ),
        side,
    )
    along = -1.05 * side
    lead[-1] = (along - 0.4, -_R - 0.3 * side, 0.4)
    tag[0] = (far + along + 0.3, -_R - 0.5 * side, -0.4)
    places = wound(lead, coil(along, far + along, -turns, 180, _R, 2.4), tag, 0.7)
    return [(x, -y, -z) for x, y, z in places]


def twisted_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The bight's turns, and the ends drawn through it."""
    x = -turns * _PITCH - 1.8
    lapped = tuple(((x, -2.1 - side, 0.9),) for side in (_SIDE, -_SIDE))
    through = tuple(((7.2, side, -0.6),) for side in (_SIDE, -_SIDE))
    return Stage(lapped, count=Count(turns, "light")), Stage(through, moves=(0, 1), free=3.0)


TWISTED = Figure(((twisted_laid, twisted_steps),), twisted_drawn)
