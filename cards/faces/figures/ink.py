"""Strands drawn in black alone: strands and a scale in, paths out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import acos, dist, hypot, radians

from cards.faces.figures.layers import Run, layers
from cards.faces.figures.strand import Strand
from layouts.face import Path, Step

INK = 0.78  # of a strand's thickness: strands that touch keep white between them
EDGE = 0.5  # points; thinner lines break up on an office printer
_WHITE = 0.22  # on either side of what passes over: up to a strand that touches it
_LAP = 0.08  # of one run over the next, so that no seam shows
_BEND = radians(30)  # of one Bézier curve, at most
_STRAIGHT = radians(1)
_LONG = 2.0  # of one curve, at most

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """The box that the ink of strands fills, in thicknesses, and the points of one thickness."""

    left: float
    right: float
    low: float
    high: float


def box(strands: Sequence[Strand]) -> Frame:
    """Return the box that the strands fill."""
    half = max(strand.width for strand in strands) * INK / 2
    xs = [x for strand in strands for x, _, _ in strand.points]
    ys = [y for strand in strands for _, y, _ in strand.points]
    return Frame(min(xs), max(xs), min(ys) - half, max(ys) + half)


def inked(strands: Sequence[Strand], unit: float) -> tuple[Path, ...]:
    """Return the strands drawn from (0, 0) rightwards and down, `unit` points a thickness."""
    frame = box(strands)
    paths: list[Path] = []
    for layer in layers(strands):
        for width in sorted({run.strand.width for run in layer.ink}, reverse=True):
            pen = INK * width * unit
            white = [run for run in layer.white if run.strand.width == width]
            ink = [run for run in layer.ink if run.strand.width == width]
            core = [run for run in ink if run.strand.look == "outline"]
            for runs, line, grey, lap, edge in (
                (white, pen + 2 * _WHITE * unit, 1.0, 0.0, 0.0),
                (ink, pen, 0.0, _LAP, 0.0),
                (core, pen - 2 * EDGE, 1.0, 2 * _LAP, EDGE / unit),
            ):
                steps = tuple(
                    step for run in runs for step in _steps(run, lap, edge, frame, unit)
                )
                if steps:
                    paths.append(Path(steps, line, grey))
    return tuple(paths)


def _steps(run: Run, lap: float, edge: float, frame: Frame, unit: float) -> Iterator[Step]:
    first_cut = run.first == 0 and run.strand.first_cut
    last_cut = run.last == len(run.strand.points) - 1 and run.strand.last_cut
    more = -edge if first_cut else lap, -edge if last_cut else lap
    move = True
    for step in _curves(run, *more):
        pairs = [((x - frame.left) * unit, (frame.high - y) * unit) for x, y in step]
        numbers = [round(number, 2) for pair in pairs for number in pair]
        match numbers:
            case [x, y]:
                yield ("move", x, y) if move else ("line", x, y)
                move=False
            case [x1, y1, x2, y2, x3, y3]:
                yield ("curve", x1, y1, x2, y2, x3, y3)


def _curves(run: Run, before: float, after: float):
    """Yield a run as few Bézier curves, and straight where it is straight."""
    points = run.strand.points
    ways = [_way(points, place) for place in range(run.first, run.last + 1)]
    line = [(x, y) for x, y, _ in points[run.first : run.last + 1]]
    line[0] = _moved(line[0], ways[0], -before)
    line[-1] = _moved(line[-1], ways[-1], after)
    yield (line[0],)
    start, bent, far = 0, 0.0, 0.0
    for end in range(1, len(line)):
        far += dist(line[end - 1], line[end])
        bent += _angle(ways[end - 1], ways[end])
        ahead = _angle(ways[end], ways[min(end + 1, len(line) - 1)])
        enough = bent + ahead > _BEND or (bent > _STRAIGHT and far > _LONG)
        if not enough and end < len(line) - 1:
            continue
        if bent < _STRAIGHT:
            yield (line[end],)
        else:
            third = far / 3
            yield (
                _moved(line[start], ways[start], third),
                _moved(line[end], ways[end], -third),
                line[end],
            )
        start, bent, far = end, 0.0, 0.0


def _way(points, place: int) -> Place:
    """Return the direction of a strand on the paper at one of its points."""
    (x1, y1, _), (x2, y2, _) = points[max(place - 1, 0)], points[min(place + 1, len(points) - 1)]
    far = hypot(x2 - x1, y2 - y1) or 1.0
    return (x2 - x1) / far, (y2 - y1) / far


def _angle(a: Place, b: Place) -> float:
    return acos(max(-1.0, min(1.0, a[0] * b[0] + a[1] * b[1])))


def _moved(place: Place, way: Place, by: float) -> Place:
    return place[0] + way[0] * by, place[1] + way[1] * by
