"""The haywire twist: the turns in, the wire and the eye out."""

from collections.abc import Sequence

from tagend.cards.figures.curve import CLOSE, Point, coil, rounded, rows
from tagend.cards.figures.eye import eye, through
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, line

_WRAPS = 5  # as knots.toml has them
_PITCH = 2.6  # of the twist: its two parts lie as an X
_NEAR = -6.2  # where the twist begins, from the eye
_R, _DEEP = 0.6, 0.9  # of either part, from the middle of the twist
_BARREL = 1.05  # of the wraps, from the standing part


def haywire_wrapped(_: int, turns: int) -> tuple[Course, ...]:
    """The wraps laid round the standing part alone, and the tag broken flush."""
    start = _far(turns) - 0.5
    wraps = _WRAPS - 0.15  # the end lies behind
    return _on_eye(turns, coil(start, start - wraps * CLOSE, -wraps, 180, _BARREL, 1.5)[1:])


def _far(turns: int) -> float:
    return _NEAR - turns * _PITCH


def _on_eye(turns: int, tag: Sequence[Point]) -> tuple[Course, ...]:
    """Return the wire from the left, round the eye, back in twist with itself, and its tag."""
    far = _far(turns)
    out, back = (coil(_NEAR, far, -turns, angle, _R, _DEEP) for angle in (0, 180))
    standing = rows(x=(far - 9.0, far - 2.0, far - 1.0), y=(0.0, 0.0, 0.1))
    loop = [
        (_NEAR, _R, 0.0),
        (-4.0, 1.6, 0.3),
        *through(0.0),
        (-4.0, -1.6, -0.3),
        (_NEAR, -_R, 0.0),
    ]
    places = [*standing, *reversed(out[:-1]), *rounded(loop, 1.2)[1:-1], *back[:-1], *tag]
    return line(places), eye(0.0)


def haywire_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The twist, the tag set square, and its wraps, before it is broken."""
    far = _far(turns)
    twisted, square = (far + 0.2, -_R, 0.0), (far - 0.5 - 0.4 * CLOSE, 0.8, 1.0)
    wrapped = (far - 0.5 - (_WRAPS - 0.15) * CLOSE, -_BARREL, -0.5)
    return (
        Stage(((twisted,),), moves=(0,), count=Count(turns, "light")),
        Stage(((square,),), moves=(0,)),
        Stage(((wrapped,),), moves=(0,), count=Count(_WRAPS)),
    )


HAYWIRE = Figure(((haywire_wrapped, haywire_steps),), haywire_wrapped, pulled=False)
