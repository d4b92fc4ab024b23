"""The perfection loop: its strand with two loops laid up, and one drawn through the other."""

from tagend.cards.figures.curve import Point, rounded
from tagend.cards.figures.strand import Course, line


def perfection_laid() -> tuple[Course, ...]:
    """Loop one behind the standing part, loop two in front of it, and the tag between them."""
    over = [(1.2, 2.0, 2.5), (1.2, 5.4, 2.5), (-2.35, 5.4, 2.5), (-2.35, 0.6, 1.5)]
    return _loop(-6.5, 7.6, over, 3.0)


def perfection_drawn() -> tuple[Course, ...]:
    """Loop two drawn back through loop one, over the tag."""
    over = [
        (1.2, 2.6, 1.2),
        (-1.2, 2.6, 2.0),
        (-1.2, 5.0, 2.6),
        (-1.2, 7.2, -1.9),
        (-1.1, 8.8, -1.2),
        (0.5, 10.6, -0.6),
        (0.5, 12.6, 0.0),
        (-0.8, 14.0, 0.0),
        (-2.7, 14.0, 0.0),
        (-4.0, 12.6, 0.0),
        (-4.0, 10.6, -0.6),
        (-2.4, 8.8, -1.2),
        (-2.35, 7.2, -1.9),
        (-2.35, 5.0, 2.6),
        (-2.35, 0.6, 1.5),
    ]
    return _loop(-6.0, 7.2, over, 4.6)


def _loop(start: float, top: float, two: list[Point], tag: float) -> tuple[Course, ...]:
    """Return the strand: loop one up to `top`, loop two, and the tag across at its height.

    The corners stand as the knot is tied, the standing part below; the figure lies on its side.
    """
    corners = [
        (0.0, start, 0.0),
        (0.0, top, 0.0),
        (-3.6, top, 0.0),
        (-3.6, 0.6, 0.0),
        (-1.2, 0.6, -1.2),
        (0.0, 0.6, -1.3),
        (1.2, 0.6, 0.0),
        *two,
        (-2.35, -1.6, 0.2),
        (-1.2, -1.6, -1.0),
        (1.2, -1.6, -1.0),
        (2.5, -1.6, 0.0),
        (2.5, tag, 1.1),
        (-5.4, tag, 1.1),
    ]
    return (line(rounded([(-y, x, z) for x, y, z in corners], 1.4)),)
