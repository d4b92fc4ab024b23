"""One step of a knot: its strands laid up and where each ends so far in; what is there then out.

A strand is drawn up to where the step leaves it; the rest of it hangs free, clear of all else.
"""

from collections.abc import Sequence
from math import dist
from typing import Literal, TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.figures.arrow import Arrow, at_end
from tagend.cards.figures.curve import Point
from tagend.cards.figures.free_end import free_end
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Side

# A place near the strand, where it ends; two, on the legs of a fold; none while it is not there;
# None where it is laid up to its very end.
Reached: TypeAlias = tuple[Point, ...] | None

_RUNS_ON = 2.4  # of a standing part, beyond what happens on it
_LEVEL = 0.05  # of a standing part


class Count(Struct, frozen=True):
    """How often something is done in one step; on which side, where that differs by place."""

    number: int
    side: Side | None = None
    what: Literal["turns", "passes"] = "turns"


class Stage(Struct, frozen=True):
    """Where each strand ends after one step, which of them move, and the turns that they make."""

    ends: tuple[Reached, ...]
    moves: tuple[int, ...] = ()  # places among the strands; ~place for a strand's first end
    count: Count | None = None
    free: float = 4.0  # the length of the free ends, in strand's thicknesses
    arrows: tuple[Arrow, ...] = ()  # more of them


def after(strands: Sequence[Course], step: Stage) -> tuple[tuple[Course, ...], tuple[Arrow, ...]]:
    """Return what is there of the strands after a step, and an arrow at each end that moves."""
    ends = dict(enumerate(step.ends))
    there = {number: strand for number, strand in enumerate(strands) if ends.get(number) != ()}
    cuts = {number: _cut(strands[number], end) for number, end in ends.items() if end}
    for number, (head, rest) in cuts.items():
        there[number] = replace(there[number], points=(*head, *rest))
    arrows = list(step.arrows)
    for number, (head, rest) in cuts.items():
        taken = [at for n, each in there.items() if n != number for at in each.points]
        taken += [arrow.middle for arrow in arrows]
        free, arrow = free_end(head, rest, taken, step.free)
        there[number] = replace(there[number], points=(*head, *free, *rest))
        arrows += [arrow] if number in step.moves else []
    short = dict(zip(there, trimmed(tuple(there.values())), strict=True))
    for number in step.moves:
        if number not in cuts:
            points = short[number].points if number >= 0 else short[~number].points[::-1]
            arrows.append(at_end(points))
    return tuple(short.values()), tuple(arrows)


def _cut(strand: Course, end: tuple[Point, ...]) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return what a strand is up to its free end, and of a folded one what comes after it."""
    first, *last = (_nearest(strand.points, place) for place in end)
    return strand.points[: first + 1], strand.points[last[0] :] if last else ()


def _nearest(points: Sequence[Point], place: Point) -> int:
    far = [dist(point, place) for point in points]
    return far.index(min(far))


def pulled(strands: Sequence[Course]) -> tuple[Arrow, ...]:
    """Return an arrow at each end of a finished knot that runs on: there it is drawn up."""
    alive = [strand for strand in strands if strand.width == 1.0]
    starts = [at_end(strand.points[::-1]) for strand in alive if not strand.first_cut]
    return *starts, *(at_end(strand.points) for strand in alive if not strand.last_cut)


def trimmed(strands: Sequence[Course]) -> tuple[Course, ...]:
    """Return strands whose standing parts run on no further than they must to be seen."""
    level = [(_level(s.points, s.first_cut), _level(s.points[::-1], s.last_cut)) for s in strands]
    body = [
        x
        for strand, (first, last) in zip(strands, level, strict=True)
        for x, _, _ in strand.points[first : len(strand.points) - last]
    ]
    body += [strand.points[-1][0] for strand in strands if strand.last_cut]
    body += [strand.points[0][0] for strand in strands if strand.first_cut]
    if not body:
        return tuple(strands)
    low, high = min(body) - _RUNS_ON, max(body) + _RUNS_ON
    result = []
    for strand, (first, last) in zip(strands, level, strict=True):
        points = strand.points
        start = next((n for n in range(first) if low <= points[n][0] <= high), first)
        end = next((n for n in range(last) if low <= points[-1 - n][0] <= high), last)
        result.append(replace(strand, points=points[start : len(points) - end]))
    return tuple(result)


def _level(points: Sequence[Point], cut: bool) -> int:
    """Return how many points at the beginning of a strand lie level, which runs on there."""
    if cut:
        return 0
    y = points[0][1]
    return next((n for n, at in enumerate(points) if abs(at[1] - y) > _LEVEL), len(points))
