"""Strands drawn in black alone: strands and a scale in, paths out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import atan2, dist, hypot, pi, radians

from cards.faces.figures.curve import Point
from cards.faces.figures.layers import Run, layers
from cards.faces.figures.strand import Strand
from layouts.face import Path, Step

INK = 0.78  # of a strand's thickness: strands that touch keep white between them
EDGE = 0.5  # points; thinner lines break up on an office printer
_HALO = 0.3  # white on either side of what passes over, in thicknesses
_LAP = 0.08  # of one run over the next, so that no seam shows
_SHORT = -0.35  # that the white stops before a run ends, and spares the strand's own bend
_BEND = radians(35)  # along one Bézier curve
_LONG = 2.0


@dataclass(frozen=True, slots=True)
class Box:
    """What the ink of strands fills, in thicknesses."""

    left: float
    right: float
    low: float
    high: float


def box(strands: Sequence[Strand]) -> Box:
    """Return the box that the strands fill."""
    half = max(strand.width for strand in strands) * INK / 2
    xs = [x for strand in strands for x, _, _ in strand.points]
    ys = [y for strand in strands for _, y, _ in strand.points]
    return Box(min(xs) , max(xs), min(ys) - half, max(ys) + half)


def inked(strands: Sequence[Strand], unit: float) -> tuple[Path, ...]:
    """Return the strands drawn from (0, 0) rightwards and down, `unit` points a thickness."""
    frame = box(strands)
    paths: list[Path] = []
    for height, runs in enumerate(layers(strands)):
        runs = sorted(runs, key=lambda run: run.strand.width)
        for width, group in groupby(runs, key=lambda run: run.strand.width):
            alike = list(group)
            outlined = [run for run in alike if run.strand.look == "outline"]
            pen = INK * width * unit
            if height:
                halo = tuple(step for run in alike for step in _steps(run, _SHORT, 0, frame, unit))
                paths.append(Path(halo, pen + 2 * _HALO * unit, grey=1.0))
            ink = tuple(step for run in alike for step in _steps(run, _LAP, 0, frame, unit))
            paths.append(Path(ink, pen))
            core = tuple(step for run in outlined for step in _steps(run, 2*_LAP, EDGE / unit, frame, unit))
            if core:
                paths.append(Path(core, pen - 2 * EDGE, grey=1.0))
    return tuple(paths)


def _steps(run: Run, lap: float, edge: float, frame: Box, unit: float) -> Iterator[Step]:
    strand = run.strand
    points = strand.points
    line = list(points[run.first : run.last + 1])
    first_cut = run.first == 0 and strand.first_cut
    last_cut = run.last == len(points) - 1 and strand.last_cut
    line = _longer(line, -edge if first_cut else lap)
    line = _longer(line[::-1], -edge if last_cut else lap)[::-1]
    flat = [((x - frame.left) * unit, (frame.high - y) * unit) for x, y, _ in line]
    return _curves(flat, unit)


def _longer(line: list[Point], by: float) -> list[Point]:
    """Return a line that begins so much earlier, or later where it is negative."""
    while by < 0 and len(line) > 2 and dist(line[0], line[1]) <= -by:
        by += dist(line[0], line[1])
        line = line[1:]
    share = by / (dist(line[0], line[1]) or 1.0)
    x, y, z = (p + (p - q) * share for p, q in zip(line[0], line[1], strict=True))
    return [(x, y, z), *line[1:]] if by < 0 else [(x, y, z), *line]


def _curves(line: Sequence[tuple[float, float]], unit: float) -> Iterator[Step]:
    """Yield a line of many points as few Bézier curves, and straight where it is straight."""
    headings = [atan2(y2 - y1, x2 - x1) for (x1, y1), (x2, y2) in pairwise(line)]
    bends = [0.0, *(abs((b - a + pi) % (2 * pi) - pi) for a, b in pairwise(headings)), 0.0]
    runs = [hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(line)]
    yield ("move", *_paper(line[0]))
    start, bent, far = 0, 0.0, 0.0
    for end in range(1, len(line)):
        far += runs[end - 1]
        if end < len(line) - 1 and bent + bends[end] < _BEND and (bent+bends[end] < 0.02 or far < _LONG * unit):
            bent += bends[end]
            continue
        if bent < 0.02:
            yield ("line", *_paper(line[end]))
        else:
            (x1, y1), (x2, y2) = _direction(line, start), _direction(line, end)
            third = far / 3
            a = (line[start][0] + x1 * third, line[start][1] + y1 * third)
            b = (line[end][0] - x2 * third, line[end][1] - y2 * third)
            yield ("curve", *_paper(a), *_paper(b), *_paper(line[end]))
        start, bent, far = end, bends[end] / 2, 0.0


def _direction(line: Sequence[tuple[float, float]], place: int) -> tuple[float, float]:
    (x1, y1), (x2, y2) = line[max(place - 1, 0)], line[min(place + 1, len(line) - 1)]
    far = hypot(x2 - x1, y2 - y1) or 1.0
    return (x2 - x1) / far, (y2 - y1) / far


def _paper(point: tuple[float, float]) -> tuple[float, float]:
    return round(point[0], 2), round(point[1], 2)
