"""The perfection loop: its strand with two loops laid up, and one drawn through the other."""

from tagend.cards.figures.curve import Point, rounded, rows
from tagend.cards.figures.strand import Course, line


def perfection_laid(*_: int) -> tuple[Course, ...]:
    """Loop one behind the standing part, loop two in front of it, and the tag between them."""
    over = rows(x=(1.2, 1.2, -2.35, -2.35), y=(2.0, 5.4, 5.4, 0.6), z=(2.5, 2.5, 2.5, 1.5))
    return _loop(-6.5, 7.6, over, 3.0)


def perfection_drawn(*_: int) -> tuple[Course, ...]:
    """Loop two drawn back through loop one, over the tag."""
    through = rows(
        x=(1.2, -1.2, -1.2, -1.2, -1.1, 0.5, 0.5, -0.8),
        y=(2.6, 2.6, 5.0, 7.2, 8.8, 10.6, 12.6, 14.0),
        z=(1.2, 2.0, 2.6, -1.9, -1.2, -0.6, 0.0, 0.0),
    )
    back = rows(
        x=(-2.7, -4.0, -4.0, -2.4, -2.35, -2.35, -2.35),
        y=(14.0, 12.6, 10.6, 8.8, 7.2, 5.0, 0.6),
        z=(0.0, 0.0, -0.6, -1.2, -1.9, 2.6, 1.5),
    )
    return _loop(-6.0, 7.2, [*through, *back], 4.6)


def _loop(start: float, top: float, two: list[Point], tag: float) -> tuple[Course, ...]:
    """Return the strand: loop one up to `top`, loop two, and the tag across at its height.

    The corners stand as the knot is tied, the standing part below; the figure lies on its side.
    """
    corners = [
        *rows(
            x=(0.0, 0.0, -3.6, -3.6, -1.2, 0.0, 1.2),
            y=(start, top, top, 0.6, 0.6, 0.6, 0.6),
            z=(0.0, 0.0, 0.0, 0.0, -1.2, -1.3, 0.0),
        ),
        *two,
        *rows(
            x=(-2.35, -1.2, 1.2, 2.5, 2.5, -5.4),
            y=(-1.6, -1.6, -1.6, -1.6, tag, tag),
            z=(0.2, -1.0, -1.0, 0.0, 1.1, 1.1),
        ),
    ]
    return (line(rounded([(-y, x, z) for x, y, z in corners], 1.4)),)
