"""Strands drawn in black alone: strands and a scale in, paths out."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from math import cos, inf, sin

from msgspec import Struct

from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.layers import Stretch, layers
from tagend.cards.figures.strand import Course
from tagend.cards.figures.stroke import Spot, Stroke, stroke, trace
from tagend.layouts.paper.face import Path

INK = 0.78  # of a strand's thickness: strands that touch keep white between them
EDGE = 0.5  # points; thinner lines break up on an office printer
_WHITE = 0.26  # on either side of what passes over: up to a strand that touches it
_CORE = 0.4  # points of white between two edges
_OFF, _TIP, _WING = 0.45, 2.6, 1.0  # of an arrow's head, from the end of its strand
_LAP = 0.2  # points of one run over the next, so that no seam shows


class Box(Struct, frozen=True):
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


def skyline(
    strands: Sequence[Course], arrows: Sequence[Arrow], box: Box
) -> tuple[tuple[float, float], ...]:
    """Return places from the left at which the ink comes nearer to the top, and how near.

    Both are from the box's upper left corner, in thicknesses.
    """
    left, high = box.left, box.high
    ink = [(x - left, high - y) for arrow in arrows for x, y in head(arrow)]
    for strand in strands:
        half = strand.width / 2
        ink += [(x - left - half, high - y - half) for x, y, _ in strand.points]
    nearer: list[tuple[float, float]] = []
    least = inf
    for across, down in sorted(ink):
        if down < least:
            nearer.append((across, least := down))
    return tuple(nearer)


class _Pen(Struct, frozen=True):
    """A pen's width in points, its grey, and how far it goes beyond a run and a cut end."""

    line: float
    grey: float = 0.0
    lap: float = 0.0
    cut: float = 0.0


def frame(strands: Sequence[Course], arrows: Sequence[Arrow] = ()) -> Box:
    """Return the box that the ink of strands and arrows fills."""
    boxes = [_box(strand.points, strand.width * INK / 2) for strand in strands]
    boxes += [_box(list(head(arrow)), 0.0) for arrow in arrows]
    return Box(
        left=min(box.left for box in boxes),
        right=max(box.right for box in boxes),
        low=min(box.low for box in boxes),
        high=max(box.high for box in boxes),
    )


def _box(points: Sequence[tuple[float, ...]], half: float) -> Box:
    xs, ys, *_ = zip(*points, strict=True)
    return Box(min(xs) - half, max(xs) + half, min(ys) - half, max(ys) + half)


@lru_cache(maxsize=512)  # a shop's cards have the same knots, drawn equally large
def inked(
    strands: tuple[Course, ...], unit: float, arrows: tuple[Arrow, ...] = ()
) -> tuple[Path, ...]:
    """Return the strands drawn from (0, 0) rightwards and down, `unit` points a thickness."""
    box = frame(strands, arrows)
    left, high = box.left, box.high

    def on_paper(points: Iterable[tuple[float, ...]]) -> list[complex]:
        return [complex((place[0] - left) * unit, (high - place[1]) * unit) for place in points]

    paper = [trace(on_paper(strand.points)) for strand in strands]
    edge = min(EDGE, (INK * unit - _CORE) / 2)
    paths: list[Path] = []

    def strokes(runs: Sequence[Stretch], pen: float) -> list[tuple[Stretch, Stroke]]:
        return [(run, stroke(paper[run.number], run.first, run.last, pen)) for run in runs]

    for over, all_runs in layers(strands):
        for width in sorted({strand.width for strand in strands}, reverse=True):
            line = INK * width * unit
            white = strokes([run for run in over if run.strand.width == width], 0.0)
            ink = strokes([run for run in all_runs if run.strand.width == width], line)
            core = [(run, drawn) for run, drawn in ink if run.strand.look == "outline"]
            paths += _drawn(white, _Pen(line + 2 * _WHITE * unit, grey=1.0))
            paths += _drawn(ink, _Pen(line, lap=_LAP, cut=edge))
            paths += _drawn(core, _Pen(line - 2 * edge, grey=1.0, lap=2 * _LAP))
    for arrow in arrows:
        tip, one, other = ((at.real, at.imag) for at in on_paper(head(arrow)))
        paths.append(Path((("move", *tip), ("line", *one), ("line", *other), ("close",)), fill=0))
    return tuple(paths)


def head(arrow: Arrow) -> Iterator[Spot]:
    """Yield the three corners of an arrow's head, a little off the end of its strand."""
    along, across = (cos(arrow.angle), sin(arrow.angle)), (-sin(arrow.angle), cos(arrow.angle))
    for far, aside in ((_TIP, 0.0), (_OFF, _WING), (_OFF, -_WING)):
        yield (
            arrow.x + far * along[0] + aside * across[0],
            arrow.y + far * along[1] + aside * across[1],
        )


def _drawn(strokes: Sequence[tuple[Stretch, Stroke]], pen: _Pen) -> Iterator[Path]:
    """Yield strokes as one path, and what is tight of them as another."""
    steps = tuple(step for run, each in strokes for step in each.longer(*_laps(run, pen)))
    if any(step[0] != "move" for step in steps):
        yield Path(steps, pen.line, pen.grey)
    tight = tuple(step for _, each in strokes for step in each.tight)
    if tight:
        yield Path(tight, pen.line, pen.grey, round_ends=True)


def _laps(run: Stretch, pen: _Pen) -> Spot:
    strand = run.strand
    at_first = run.first == 0 and strand.first_cut
    at_last = run.last == len(strand.points) - 1 and strand.last_cut
    return pen.cut if at_first else pen.lap, pen.cut if at_last else pen.lap
