"""One step of a knot: its strands laid up and where each ends so far in; what is there then out.

A strand is drawn up to where the step leaves it; the rest of it hangs free, clear of all else.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import atan2, cos, dist, hypot, inf, pi, radians, sin
from typing import Literal, TypeAlias

from tagend.cards.figures.curve import STEP, Point
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Side

# A place near the strand, where it ends; two, on the legs of a fold; none while it is not there;
# None where it is laid up to its very end.
Reached: TypeAlias = tuple[Point, ...] | None

_SHORTER = (1.0, 0.75, 0.55)  # of a free end, the best first
_BENDS = (0, 20, -20, 40, -40, 60, -60, 80, -80, 100, -100, 130, -130)  # degrees, the best first
_CLEAR = 0.9  # of a free end from all else, and a little more of the arrow at its end
_ARROW = 1.9  # beyond the end, the middle of an arrow and the room about it
_TOUCHES = 1.6  # along a free end, where it may be near what it comes from
_OWN = 2.2  # along the strand before it
_BEFORE = 3  # points from which the direction of an end is taken
_RUNS_ON = 2.4  # of a standing part, beyond what happens on it
_LEVEL = 0.05  # of a standing part


@dataclass(frozen=True, slots=True)
class Arrow:
    """The end of a strand that moves: its place, and its direction in radians."""

    x: float
    y: float
    angle: float

    @property
    def middle(self) -> Point:
        return self.x + _ARROW * cos(self.angle), self.y + _ARROW * sin(self.angle), 0.0


@dataclass(frozen=True, slots=True)
class Count:
    """How often something is done in one step; on which side, where that differs by place."""

    number: int
    side: Side | None = None
    what: Literal["turns", "passes"] = "turns"


@dataclass(frozen=True, slots=True)
class Stage:
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
        free, arrow = _free(head, rest, taken, step.free)
        there[number] = replace(there[number], points=(*head, *free, *rest))
        arrows += [arrow] if number in step.moves else []
    short = dict(zip(there, trimmed(tuple(there.values())), strict=True))
    for number in step.moves:
        if number not in cuts:
            points = short[number].points if number >= 0 else short[~number].points[::-1]
            arrows.append(_arrow(points))
    return tuple(short.values()), tuple(arrows)


def _cut(strand: Course, end: tuple[Point, ...]) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return what a strand is up to its free end, and of a folded one what comes after it."""
    first, *last = (_nearest(strand.points, place) for place in end)
    return strand.points[: first + 1], strand.points[last[0] :] if last else ()


def _nearest(points: Sequence[Point], place: Point) -> int:
    return min(range(len(points)), key=lambda number: dist(points[number], place))


def _free(
    head: Sequence[Point], rest: Sequence[Point], others: Sequence[Point], long: float
) -> tuple[list[Point], Arrow]:
    """Return the free end that is nearest to straight and clear of all, and the arrow at its end.

    Where there is a rest, the free end is a fold whose legs go side by side.
    """
    (x, y, z) = head[-1]
    half = (0.0, 0.0)
    if rest:
        half = (x - rest[0][0]) / 2, (y - rest[0][1]) / 2
    start = (x - half[0], y - half[1], z)
    heading = _angle(head[-1 - _BEFORE], head[-1])
    own = int(_OWN / STEP)
    near = [
        p
        for p in (*others, *head[:-own], *rest[own:])
        if hypot(p[0] - start[0], p[1] - start[1]) < long + 2 * _ARROW
    ]
    best, found = -inf, []
    for length in (share * long for share in _SHORTER):
        for bend in _BENDS:
            way = list(_way(start, heading, radians(bend), length))
            clear = _clearance(way, near, hypot(*half))
            if clear > best:
                best, found = clear, way
            if best >= 0:
                break
        if best >= 0:
            break
    (xe, ye, _), angle = found[-1]
    if not rest:
        return [place for place, _ in found], Arrow(xe, ye, angle)
    side = hypot(*half)
    sign = 1.0 if -half[0] * sin(heading) + half[1] * cos(heading) > 0 else -1.0
    out = [_aside(place, angle, sign * side) for place, angle in found]
    back = [_aside(place, angle, -sign * side) for place, angle in found]
    bow = [_turned(found[-1], sign * side, share / 6) for share in range(1, 6)]
    tip = _turned(found[-1], sign * side, 0.5)
    return [*out, *bow, *reversed(back)], Arrow(tip[0], tip[1], angle)


def _way(start: Point, heading: float, bend: float, length: float) -> Iterator[tuple[Point, float]]:
    """Yield places along a free end that bends evenly, and the direction at each."""
    x, y, z = start
    count = int(length / STEP)
    for step in range(1, count + 1):
        angle = heading + bend * (step - 0.5) / count
        x, y = x + STEP * cos(angle), y + STEP * sin(angle)
        yield (x, y, z), heading + bend * step / count


def _clearance(way: Sequence[tuple[Point, float]], others: Sequence[Point], half: float) -> float:
    """Return by how much the least distance from others is more than it must be."""
    (x, y, _), angle = way[-1]
    middle = Arrow(x, y, angle).middle
    spots = [(p[0], p[1], _CLEAR + half) for p, _ in way[int(_TOUCHES / STEP) :: 2]]
    spots += [(middle[0], middle[1], _ARROW)]
    return min(
        (hypot(p[0] - x, p[1] - y) - room for x, y, room in spots for p in others), default=inf
    )


def _aside(place: Point, angle: float, side: float) -> Point:
    return place[0] - side * sin(angle), place[1] + side * cos(angle), place[2]


def _turned(end: tuple[Point, float], side: float, share: float) -> Point:
    """Return a place on the half circle from one leg of a fold to the other."""
    (x, y, z), angle = end
    along, across = side * sin(pi * share), side * cos(pi * share)
    if side < 0:
        along = -along
    return (
        x + along * cos(angle) - across * sin(angle),
        y + along * sin(angle) + across * cos(angle),
        z,
    )


def _angle(start: Point, end: Point) -> float:
    return atan2(end[1] - start[1], end[0] - start[0])


def _arrow(points: Sequence[Point]) -> Arrow:
    """Return an arrow at the end of some points."""
    return Arrow(points[-1][0], points[-1][1], _angle(points[-1 - _BEFORE], points[-1]))


def pulled(strands: Sequence[Course]) -> tuple[Arrow, ...]:
    """Return an arrow at each end of a finished knot that runs on: there it is drawn up."""
    alive = [strand for strand in strands if strand.width == 1.0]
    starts = [_arrow(strand.points[::-1]) for strand in alive if not strand.first_cut]
    return *starts, *(_arrow(strand.points) for strand in alive if not strand.last_cut)


def trimmed(strands: Sequence[Course]) -> tuple[Course, ...]:
    """Return strands whose standing parts run on no further than they must to be seen."""
    level = [(_level(s.points, s.first_cut), _level(s.points[::-1], s.last_cut)) for s in strands]
    body = [
        x
        for strand, (first, last) in zip(strands, level, strict=True)
        for x, *_ in strand.points[first : len(strand.points) - last]
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
