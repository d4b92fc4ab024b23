"""The clinches, plain, improved and in pairs: the turns in, the strands and what they hold out."""

from msgspec.structs import replace

from tagend.cards.figures.curve import CLOSE, Point, coil, pitch, rows, wound
from tagend.cards.figures.eye import SWIVEL, eye, ring, swivel, through
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.step import Count, Stage
from tagend.cards.figures.strand import Course, line

_ROOM = 15.0  # for the turns, laid up
_R = 1.3  # of the turns laid up, from the standing part
_IN_RING = 0.6  # from the middle of a ring, so that both have room in it


def clinch_laid(_: int, turns: int) -> tuple[Course, ...]:
    """The tag wound round the standing part and half on, then through the loop by the eye."""
    near = -4.8
    wraps = turns + 0.5
    far = near - wraps * pitch(turns, _ROOM, 1.9)
    back = _R + 1.5
    tag = [
        *_round(far, 1.0, 1.5),
        *rows(x=-3.3, y=(back, _R, -_R, -_R - 1.9), z=(-1.6, -1.6, 1.6, 1.6)),
    ]
    return _on_eye(_laid_lead(far, near), coil(near, far, -wraps, 180, _R, _R), tag)


def ring_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """A clinch to either side of a ring."""
    return *_apart(_IN_RING, clinch_laid(0, thick), clinch_laid(0, thin)), ring(2.1)


def ring_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """Both clinches drawn close."""
    return *_apart(_IN_RING, clinch_drawn(0, thick), clinch_drawn(0, thin)), ring(2.1)


def swivel_laid(thick: int, thin: int) -> tuple[Course, ...]:
    """A clinch to either eye of a swivel."""
    return *_apart(SWIVEL, clinch_laid(0, thick), clinch_laid(0, thin)), *swivel()


def swivel_drawn(thick: int, thin: int) -> tuple[Course, ...]:
    """Both clinches drawn close."""
    return *_apart(SWIVEL, clinch_drawn(0, thick), clinch_drawn(0, thin)), *swivel()


def _apart(
    far: float, thick: tuple[Course, ...], thin: tuple[Course, ...]
) -> tuple[Course, Course]:
    """Return the strands of two clinches, to the left and to the right, each so far from 0."""
    upper = tuple((x - far, y, z) for x, y, z in thick[0].points)
    lower = tuple((far - x, -y, z) for x, y, z in thin[0].points)
    return replace(thick[0], points=upper), replace(thin[0], points=lower, look="solid")


def improved_laid(_: int, turns: int) -> tuple[Course, ...]:
    """As the clinch, with whole turns; then through the big loop that the way back has made."""
    near = -5.6
    far = near - turns * pitch(turns, _ROOM, 1.9)
    back = -_R - 2.0
    tag = [
        *_round(far, -1.0, 2.0),
        *rows(
            x=(-2.8, -2.8, -2.8, -4.2, -4.2, -4.2, -4.2),
            y=(back, -_R, 0.2, 0.2, -_R, back, back - 1.8),
            z=(-0.4, 1.4, 0.2, -0.4, -1.3, 0.9, 0.9),
        ),
    ]
    return _on_eye(_laid_lead(far, near), coil(near, far, -turns, 180, _R, _R), tag)


def _laid_lead(far: float, near: float) -> list[Point]:
    """Return the strand to where its turns begin: standing part, eye, and lower way out of it."""
    return [
        *rows(x=(far - 3.0, near, near + 1.0, -2.8), y=(0.0, 0.0, _R, _R), z=(0.0, 0.0, 0.0, 0.2)),
        *through(0.0),
        (-2.8, -_R, -0.2),
        (near, -_R, 0.0),
    ]


def _round(far: float, side: float, away: float) -> list[Point]:
    """Return the end of the turns, on one side, and the beginning of the way back beyond it."""
    back = side * (_R + away)
    return rows(
        x=(far, far - 1.5, far - 1.5, far + 0.5),
        y=(side * _R, side * _R, back, back),
        z=(0.0, -side, -side, -0.4),
    )


def clinch_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """The turns drawn close, over the standing part and the own one, the tag between the two.

    As in the blood knot, the turns go over to the way back.
    """
    near = -4.4
    wraps = turns + 0.5
    far = near - wraps * CLOSE
    tag = rows(
        x=(near + 0.1, near + 0.5, -3.1, -3.1), y=(-0.5, -1.4, -1.4, 2.6), z=(-2.0, -0.9, 0.0, 0.0)
    )
    return _on_eye(_drawn_lead(far), coil(far, near, -wraps, 90, 1.05, 2.1), tag)


def improved_drawn(_: int, turns: int) -> tuple[Course, ...]:
    """As the clinch, the tag then under the turn nearest to the eye, which was the big loop."""
    near = -5.4
    far = near - turns * CLOSE
    tag = rows(
        x=(near, near + 0.7, -3.1, -3.1, -3.2, -4.3, -4.3, -4.3, -4.3),
        y=(0.4, 1.7, 1.7, 0.0, -1.4, -1.4, 0.4, 1.7, 3.1),
        z=(2.0, 1.6, 1.2, 0.0, 0.4, 1.4, 1.7, 0.1, 0.0),
    )
    return _on_eye(_drawn_lead(far), coil(far, near, -turns, 90, 1.05, 2.1), tag)


def _drawn_lead(far: float) -> list[Point]:
    """Return the strand to where its turns begin, standing part behind and own part in front."""
    return [
        *rows(x=(far - 3.2, -4.6, -3.1), y=0.0, z=(-0.5, -0.5, -1.2)),
        *((x, -y, -z) for x, y, z in through(0.0)),
        *rows(
            x=(-3.1, -4.6, far - 0.9, far - 0.9, far + 0.2),
            y=(0.0, 0.0, 0.0, -0.2, 0.3),
            z=(1.2, 0.5, 0.5, 2.2, 2.2),
        ),
    ]


def _on_eye(lead: list[Point], turns: list[Point], tag: list[Point]) -> tuple[Course, ...]:
    return line(wound(lead, turns, tag)), eye(0.0)


def clinch_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The turns, and the tag back through the loop by the eye."""
    return Stage((_wound(turns),), moves=(0,), count=Count(turns, "light")), Stage((), moves=(0,))


def ring_steps(thick: int, thin: int) -> tuple[Stage, ...]:
    """One clinch, and then the other."""
    return _pair_steps(_IN_RING, thick, thin)


def swivel_steps(thick: int, thin: int) -> tuple[Stage, ...]:
    """One clinch, and then the other."""
    return _pair_steps(SWIVEL, thick, thin)


def _pair_steps(far: float, thick: int, thin: int) -> tuple[Stage, ...]:
    ((x, y, z),) = _wound(thick)
    return (
        Stage((((x - far, y, z),), ()), moves=(0,), count=Count(thick, "heavy")),
        Stage((None, ()), moves=(0,)),
        Stage((), moves=(1,), count=Count(thin, "light")),
    )


def _wound(turns: int) -> tuple[Point]:
    """Return where the tag of a clinch has made its turns."""
    return ((-4.8 - (turns + 0.5) * pitch(turns, _ROOM, 1.9), _R, 0.0),)


def improved_steps(_: int, turns: int) -> tuple[Stage, ...]:
    """The turns, and the tag back through both loops."""
    far = -5.6 - turns * pitch(turns, _ROOM, 1.9)
    wound = Stage((((far, -_R, 0.0),),), moves=(0,), count=Count(turns, "light"))
    return wound, Stage((), moves=(0,))


RING_JOINT = Figure(((ring_laid, ring_steps),), ring_drawn)
SWIVEL_JOINT = Figure(((swivel_laid, swivel_steps),), swivel_drawn)
IMPROVED = Figure(((improved_laid, improved_steps),), improved_drawn)
CLINCH = Figure(((clinch_laid, clinch_steps),), clinch_drawn)
