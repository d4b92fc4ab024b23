"""The surgeon's knots: the passes in, two strands laid up and drawn up out, or one in a loop."""

from tagend.cards.figures.curve import Point, coil, rounded, smooth, wound
from tagend.cards.figures.strand import Course, line, turned

_PITCH = 2.7  # of the turns of two strands, laid up
_CLOSE = 2.15  # drawn up


def surgeons_laid(passes: int) -> tuple[Course, ...]:
    """A loop of both strands with the ends passed through it: an overhand of so many passes."""
    end = _PITCH * passes + 6.2
    thick = _laid(passes, 0.5, -4.6, end - 2.0)
    thin = _laid(passes, -0.5, -2.2, end)
    return _two(thick, thin)


def _laid(passes: int, side: float, start: float, end: float) -> list[Point]:
    """Return one of two strands side by side, the one that is half a strand to the left."""
    turns = passes + 0.25  # and the first and last quarter in the lines that come and go
    far = turns * _PITCH
    right, left, top = far + 2.4 - side, -0.9 + side, 4.4 - side
    lead = [
        (start, side, 0.0),
        (right, side, 0.0),
        (right, top, 0.0),
        (left, top, 0.0),
        (left, 2.9, 0.2),
        (side * 1.1, 1.4, 1.1),
    ]
    low, along = -2.1 + side, side * 1.1
    tag = [(far + along, low + 0.9, 1.2), (far + along + 0.4, low, 0.7), (end, low, 0.0)]
    return wound(lead, coil(along, far + along, turns, 45, 2.0, 1.4), tag, 1.4)


def surgeons_drawn(passes: int) -> tuple[Course, ...]:
    """The turns drawn close over both strands of either side.

    The turns go over to the loop, and each pair of ends leaves in line.
    """
    end = _CLOSE * passes + 4.4
    return _two(_drawn(passes, 0.5, -4.6, end - 1.6), _drawn(passes, -0.5, -3.0, end))


def _drawn(passes: int, side: float, start: float, end: float) -> list[Point]:
    far = passes * _CLOSE
    shift = -side * 1.05  # along the turns
    lead = [
        (start, side, -0.6),
        (far + 1.5 + 1.7 * shift, side, -0.6),
        (far + 1.5 + 1.7 * shift, 0.6 * side + 0.2, side - 2.7),
        (far + 0.6 + 1.8 * shift, 1.4 - 0.6 * side, 1.6 * side - 2.3),
    ]
    tag = [
        (shift, 1.6, 0.3),
        (shift - 0.5, 1.7, 1.9),
        (shift - 0.7, -side, 1.6),
        (shift + 0.8, -side, 0.6),
        (end, -side, 0.6),
    ]
    turns = coil(far + shift, shift, passes + 50 / 360, -50, 1.6, 2.0)
    return wound(lead, turns, tag, 0.8)


def loop_laid(passes: int) -> tuple[Course, ...]:
    """The same in one strand folded back on itself: the fold is the loop, to the left."""
    end = _PITCH * passes + 5.0
    return _looped(_laid(passes, 0.5, -4.8, end), _laid(passes, -0.5, -2.2, end))


def loop_drawn(passes: int) -> tuple[Course, ...]:
    """The turns drawn close."""
    end = _CLOSE * passes + 2.4
    return _looped(_drawn(passes, -0.5, -4.8, end), _drawn(passes, 0.5, -3.0, end))


def _looped(upper: list[Point], lower: list[Point]) -> tuple[Course, ...]:
    """Return two runs, whose far ends lie side by side, joined there into a loop."""
    (x, top, z), (_, low, _) = upper[-1], lower[-1]
    bow = [
        (x + 0.3, top, z),
        (x + 2.0, top + 0.9, z),
        (x + 6.0, top + 0.9, z),
        (x + 6.0, low - 0.9, z),
        (x + 2.0, low - 0.9, z),
        (x + 0.3, low, z),
    ]
    return (line(turned([*upper, *rounded(bow, 1.3), *reversed(lower)])),)


def _two(thick: list[Point], thin: list[Point]) -> tuple[Course, ...]:
    return (
        Course(smooth(thick), "outline", last_cut=True),
        Course(smooth(thin), "solid", first_cut=True),
    )
