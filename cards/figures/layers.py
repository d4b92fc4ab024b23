"""Which parts of the strands are drawn first: strands in, their runs in layers out.

A strand is cut into short pieces. Where two cover one another on the paper, the one nearer to the
reader goes into a later layer; what nothing covers goes into the last. Neighbouring pieces of one
layer make a run. Within a layer nothing covers anything, so that a layer takes a few strokes of
the pen however many runs it has.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import groupby
from math import dist
from operator import attrgetter

from msgspec import Struct

from tagend.cards.figures.strand import Course
from tagend.cards.figures.stroke import Spot

_STEPS = 3  # of the curve in a piece
_COVERS = 0.95  # pieces nearer than this, in mean widths, lie over one another
_DEEPER = 0.3  # widths of depth between what passes over and what it covers; less is a touch
_BEND = 3.0  # along a strand, in widths: pieces nearer than this are a bend, not a crossing
_TURN = 6.5  # in widths: what lies on itself nearer than this has just gone round something

_ROWS = 1000  # of cells in a column, at least: each cell has a number
_BESIDE = tuple(column * _ROWS + row for column in (-1, 0, 1) for row in (-1, 0, 1))


class Stretch(Struct, frozen=True):
    """Part of a strand: the strand, its place among all, and the first and last point."""

    strand: Course
    number: int
    first: int
    last: int


class _Bit(Struct):
    strand: Course
    number: int
    first: int
    last: int
    at: Spot
    z: float
    along: float
    reach: float
    height: int = 0
    covered: bool = False
    parted: bool = False  # by white from what it covers


@lru_cache(maxsize=64)  # of a figure that is drawn in several sizes
def layers(strands: tuple[Course, ...]) -> Sequence[tuple[Sequence[Stretch], Sequence[Stretch]]]:
    """Return what to draw, the lowest layer first: of each, what white parts from others, and all.

    The white is laid under the former before the latter are drawn.
    """
    cut = [list(_pieces(strand, number)) for number, strand in enumerate(strands)]
    pieces = [piece for of_one in cut for piece in of_one]
    _stack(pieces, max(strand.width for strand in strands))
    top = max(piece.height for piece in pieces)
    result: list[tuple[list[Stretch], list[Stretch]]] = [([], []) for _ in range(top + 1)]
    for of_one in cut:
        for height, run in _alike(of_one, [p.height if p.covered else top for p in of_one]):
            white, ink = result[height]
            ink.append(_run(run))
            for over, part in _alike(run, [piece.parted for piece in run]):
                if over:
                    white.append(_run(part))
    return result


def _pieces(strand: Course, number: int) -> Iterator[_Bit]:
    along, last, reach = 0.0, len(strand.points) - 1, _COVERS * strand.width / 2
    for first in range(0, last, _STEPS):
        end = min(first + _STEPS, last)
        (x1, y1, z1), (x2, y2, z2) = strand.points[first], strand.points[end]
        middle = (x1 + x2) / 2, (y1 + y2) / 2
        yield _Bit(strand, number, first, end, middle, (z1 + z2) / 2, along, reach)
        along += dist(strand.points[first], strand.points[end])


def _stack(pieces: Iterable[_Bit], cell: float) -> None:
    """Lift each piece, the furthest first, one layer above the highest that it covers."""
    around: dict[int, list[_Bit]] = defaultdict(list)  # what lies in or beside a cell
    for piece in sorted(pieces, key=attrgetter("z")):
        at, z, reach = piece.at, piece.z, piece.reach
        own = int(at[0] // cell) * _ROWS + int(at[1] // cell)
        for lower in around[own]:
            if z - lower.z < _DEEPER:
                break  # as do all that follow
            if lower.covered and lower.height < piece.height and piece.parted:
                continue  # nothing would change
            if dist(at, lower.at) < reach + lower.reach and not _bent(piece, lower):
                lower.covered = True
                piece.parted = piece.parted or _parted(piece, lower)
                piece.height = max(piece.height, lower.height + 1)
        for beside in _BESIDE:
            around[own + beside].append(piece)


def _bent(upper: _Bit, lower: _Bit) -> bool:
    near = abs(upper.along - lower.along) < _BEND * upper.strand.width
    return near and upper.number == lower.number


def _parted(upper: _Bit, lower: _Bit) -> bool:
    """Whether white must part the two: the edges of an outline show on black without it.

    Nor does it part a strand from itself just beyond a bend, where it would be a speck.
    """
    if upper.number == lower.number and abs(upper.along - lower.along) < _TURN:
        return False
    return upper.strand.look == "solid" or lower.strand.look == "outline"


def _alike(pieces: Sequence[_Bit], marks: Sequence[int]) -> Iterator[tuple[int, list[_Bit]]]:
    """Yield each stretch of pieces that have one mark."""
    pairs = zip(marks, pieces, strict=True)
    for mark, group in groupby(pairs, key=lambda pair: pair[0]):
        yield mark, [piece for _, piece in group]


def _run(pieces: Sequence[_Bit]) -> Stretch:
    first, last = pieces[0], pieces[-1]
    return Stretch(strand=first.strand, number=first.number, first=first.first, last=last.last)
