"""The surgeon's knots: the passes in, two strands laid up and drawn up out, or one in a loop."""

from tagend.cards.figures.curve import Point, beside, coil, rounded, rows, wound
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, beside_one_another, line, turned

_PITCH = 2.7  # of the turns of two strands, laid up
_CLOSE = 2.15  # drawn up


def surgeons_laid(_: int, passes: int) -> tuple[Course, ...]:
    """A loop of both strands with the ends passed through it: an overhand of so many passes."""
    end = _PITCH * passes + 6.2
    thick = _laid(passes, 0.5, -4.6, end - 2.0)
    thin = _laid(passes, -0.5, -2.2, end)
    return beside_one_another(thick, thin)


def _laid(passes: int, side: float, start: float, end: float) -> list[Point]:
    """Return one of two strands side by side, the one that is half a strand to the left."""
    turns = passes + 0.25  # and the first and last quarter in the lines that come and go
    far = turns * _PITCH
    right, left, top = far + 2.4 - side, -0.9 + side, 4.4 - side
    lead = rows(
        x=(start, right, right, left, left, side * 1.1),
        y=(side, side, top, top, 2.9, 1.4),
        z=(0.0, 0.0, 0.0, 0.0, 0.2, 1.1),
    )
    low, along = -2.1 + side, side * 1.1
    tag = rows(x=(far + along, far + along + 0.4, end), y=(low + 0.9, low, low), z=(1.2, 0.7, 0.0))
    return wound(lead, coil(along, far + along, turns, 45, 2.0, 1.4), tag, 1.4)


def surgeons_drawn(_: int, passes: int) -> tuple[Course, ...]:
    """The turns drawn close over both strands of either side.

    The turns go over to the loop, and each pair of ends leaves in line.
    """
    end = _CLOSE * passes + 4.4
    return beside_one_another(_drawn(passes, 0.5, -4.6, end - 1.6), _drawn(passes, -0.5, -3.0, end))


def _drawn(passes: int, side: float, start: float, end: float) -> list[Point]:
    far = passes * _CLOSE
    shift = -side * 1.05  # along the turns
    lead = beside(
        rows(
            x=(start, far + 1.9, far + 3.0, far + 2.1, far + 0.8 + 2 * shift),
            y=(0.0, 0.0, 0.8, 1.45, 1.35),
            z=(-0.6, -0.6, -1.4, -2.1, -2.2),
        ),
        1.2 * side,
    )
    tag = rows(
        x=(shift, shift - 0.5, shift - 0.7, shift + 0.8, end),
        y=(1.6, 1.7, -side, -side, -side),
        z=(0.3, 1.9, 1.6, 0.6, 0.6),
    )
    turns = coil(far + shift, shift, passes + 50 / 360, -50, 1.6, 2.0)
    return wound(lead, turns, tag)


def loop_laid(_: int, passes: int) -> tuple[Course, ...]:
    """The same in one strand folded back on itself: the fold is the loop, to the left."""
    end = _PITCH * passes + 5.0
    return _looped(_laid(passes, 0.5, -4.8, end), _laid(passes, -0.5, -2.2, end))


def loop_drawn(_: int, passes: int) -> tuple[Course, ...]:
    """The turns drawn close."""
    end = _CLOSE * passes + 2.4
    return _looped(_drawn(passes, -0.5, -4.8, end), _drawn(passes, 0.5, -3.0, end))


def _looped(upper: list[Point], lower: list[Point]) -> tuple[Course, ...]:
    """Return two runs, whose far ends lie side by side, joined there into a loop."""
    (x, top, z), (_, low, _) = upper[-1], lower[-1]
    bow = rows(
        x=(x + 0.3, x + 2.0, x + 6.0, x + 6.0, x + 2.0, x + 0.3),
        y=(top, top + 0.9, top + 0.9, low - 0.9, low - 0.9, low),
        z=z,
    )
    return (line(turned([*upper, *rounded(bow, 1.3), *reversed(lower)])),)


def surgeons_steps(_: int, passes: int) -> tuple[Stage, ...]:
    """The loop of both strands, and their ends passed through it."""
    end = _PITCH * passes + 3.4
    return (
        Stage(tuple((_over(side),) for side in (0.5, -0.5)), moves=(0, 1)),
        Stage(
            tuple(((end, -2.1 + side, 0.3),) for side in (0.5, -0.5)),
            (0, 1),
            Count(passes, "light", "passes"),
            3.0,
        ),
    )


def loop_steps(_: int, passes: int) -> tuple[Stage, ...]:
    """The same of a folded end."""
    end, low = _PITCH * passes + 4.0, -2.1
    through = turned([(end, low + side, 0.0) for side in (0.5, -0.5)])
    return (
        Stage((tuple(turned([_over(0.5), _over(-0.5)])),), moves=(0,)),
        Stage((tuple(through),), moves=(0,), count=Count(passes, "light", "passes")),
    )


def _over(side: float) -> Point:
    """Return where a strand has come over the standing parts, from its loop."""
    return side * 1.1 + 0.62, -1.2, 1.1


SURGEONS = Figure(((surgeons_laid, surgeons_steps),), surgeons_drawn)
LOOP = Figure(((loop_laid, loop_steps),), loop_drawn)
