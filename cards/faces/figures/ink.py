"""Strands drawn in black alone: strands and a scale in, paths out."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import acos, dist
from typing import TypeAlias

from cards.faces.figures.curve import Point
from cards.faces.figures.layers import Run, layers
from cards.faces.figures.strand import Strand
from layouts.face import Path, Step

INK = 0.78  # of a strand's thickness: strands that touch keep white between them
EDGE = 0.5  # points; thinner lines break up on an office printer
_WHITE = 0.22  # on either side of what passes over: up to a strand that touches it
_LAP = 0.08  # of one run over the next, so that no seam shows
_BEND = 0.5  # radians in one Bézier curve, at most
_STRAIGHT = 0.02
_LONG = 2.0  # of one curve, at most
_CUSP = 1.2  # radians between neighbouring points: drawn on, the pen's corner would stick out

_Place: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """The box that strands fill, in thicknesses."""

    left: float
    right: float
    low: float
    high: float

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class _Pen:
    """What is drawn along runs: so wide and grey, lapping over their ends but not over a cut."""

    line: float  # points
    grey: float
    lap: float = 0.0
    cut: float = 0.0  # left free before a cut end


def frame(strands: Sequence[Strand]) -> Frame:
    """Return the box that the ink of strands fills."""
    points = [(x, y, strand.width * INK / 2) for strand in strands for x, y, _ in strand.points]
    return Frame(
        min(x - half for x, _, half in points),
        max(x + half for x, _, half in points),
        min(y - half for _, y, half in points),
        max(y + half for _, y, half in points),
    )


def inked(strands: Sequence[Strand], unit: float) -> tuple[Path, ...]:
    """Return the strands drawn from (0, 0) rightwards and down, `unit` points a thickness."""
    around = frame(strands)
    paths: list[Path] = []
    for layer in layers(strands):
        for width in sorted({run.strand.width for run in layer.ink}, reverse=True):
            white = [run for run in layer.white if run.strand.width == width]
            ink = [run for run in layer.ink if run.strand.width == width]
            core = [run for run in ink if run.strand.look == "outline"]
            line = INK * width * unit
            for runs, pen in (
                (white, _Pen(line + 2 * _WHITE * unit, 1.0)),
                (ink, _Pen(line, 0.0, _LAP)),
                (core, _Pen(line - 2 * EDGE, 1.0, 2 * _LAP, EDGE / unit)),
            ):
                if runs:
                    paths.append(_path(runs, pen, around, unit))
    return tuple(paths)


def _path(runs: Iterable[Run], pen: _Pen, around: Frame, unit: float) -> Path:
    def paper(place: _Place) -> _Place:
        x, y = place
        return round((x - around.left) * unit, 2), round((around.high - y) * unit, 2)

    steps: list[Step] = []
    for run in runs:
        for curve in _curves(run, pen):
            match [paper(place) for place in curve]:
                case [(x, y)]:
                    steps.append(("line", x, y))
                case [(x1, y1), (x2, y2)]:
                    ...
    return Path(tuple(steps), pen.line, pen.grey)
