"""Which parts of the strands are drawn first: strands in, their runs in layers out.

A strand is cut into short pieces. Where two cover one another on the paper, the one nearer to the
reader goes into a later layer; what nothing covers goes into the last. Neighbouring pieces of one
layer make a run. Within a layer nothing covers anything, so that a layer takes a few strokes of
the pen however many runs it has.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import hypot

from cards.faces.figures.strand import Strand

_STEPS = 2  # of the curve in a piece
_COVERS = 0.95  # pieces nearer than this, in mean widths, lie over one another
_BEND = 1.6  # along a strand, in widths: pieces nearer than this are a bend, not a crossing


@dataclass(frozen=True, slots=True)
class Run:
    """Part of a strand: its first and last point."""

    strand: Strand
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Layer:
    """Runs to be drawn together, once white has been laid where they pass over others."""

    white: tuple[Run, ...]
    ink: tuple[Run, ...]


@dataclass(slots=True)
class _Piece:
    strand: Strand
    first: int
    last: int
    x: float
    y: float
    z: float
    along: float
    height: int = 0
    covered: bool = False

    def covers(self, other: "_Piece") -> bool:
        width = self.strand.width
        if self.strand is other.strand and abs(self.along - other.along) < _BEND * width:
            return False
        reach = _COVERS * (width + other.strand.width) / 2
        return hypot(self.x - other.x, self.y - other.y) < reach


def layers(strands: Sequence[Strand]) -> list[Layer]:
    """Return what to draw, the lowest layer first."""
    pieces = [piece for strand in strands for piece in _pieces(strand)]
    _stack(pieces, max(strand.width for strand in strands))
    top = max(piece.height for piece in pieces)
    inks: list[list[Run]] = [[] for _ in range(top + 1)]
    whites: list[list[Run]] = [[] for _ in range(top + 1)]
    for (_, height, white), run in groupby(
    for strand in strands:
        own = [piece for piece in pieces if piece.strand is strand]
        height_of = lambda p: p.height if p.covered else top
        for height, group in groupby(own, key=height_of):
            run = list(group)
            inks[height].append(_run(run))
            for white, part in groupby(run, key=lambda piece: piece.height > 0):
                if white:
                    whites[height].append(_run(list(part)))
    return [Layer(tuple(w), tuple(i)) for w, i in zip(whites, inks, strict=True)]
