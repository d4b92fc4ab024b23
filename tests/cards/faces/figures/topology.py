"""What curves in space say whatever their shape: crossings on the paper, and knot invariants."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import cos, dist, floor, sin

Point = tuple[float, float, float]
Curve = Sequence[Point]


@dataclass(frozen=True, slots=True)
class Pass:
    """Where a curve goes over or under: which curve, and how far along, in points."""

    curve: int
    at: float
    x: float
    y: float
    z: float
    dx: float
    dy: float


@dataclass(frozen=True, slots=True)
class Crossing:
    over: Pass
    under: Pass

    @property
    def sign(self) -> int:
        return 1 if self.over.dx * self.under.dy - self.over.dy * self.under.dx > 0 else -1


def crossings(curves: Sequence[Curve]) -> list[Crossing]:
    """Return every place where the curves cross on the paper."""
    cells: dict[tuple[int, int], list[tuple[int, int]]] = defaultdict(list)
    found = []
    for number, curve in enumerate(curves):
        for place, (a, b) in enumerate(pairwise(curve)):
            met = set()
            for cell in _cells(a, b):
                met.update(cells[cell])
                cells[cell].append((number, place))
            for other, there in sorted(met):
                if other == number and abs(there - place) < 2:
                    continue
                hit = _meet(a, b, *curves[other][there : there + 2])
                if hit is not None:
                    s, t = hit
                    p = _pass(number, place, s, a, b)
                    q = _pass(other, there, t, *curves[other][there : there + 2])
                    found.append(Crossing(p, q) if p.z > q.z else Crossing(q, p))
    return found


def _cells(a: Point, b: Point) -> Iterator[tuple[int, int]]:
    for column in range(floor(min(a[0], b[0])), floor(max(a[0], b[0])) + 1):
        for row in range(floor(min(a[1], b[1])), floor(max(a[1], b[1])) + 1):
            yield column, row


def _meet(a: Point, b: Point, c: Point, d: Point) -> tuple[float, float] | None:
    x1, y1, x2, y2 = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    cross = x1 * y2 - y1 * x2
    if cross == 0:
        return None
    s = ((c[0] - a[0]) * y2 - (c[1] - a[1]) * x2) / cross
    t = ((c[0] - a[0]) * y1 - (c[1] - a[1]) * x1) / cross
    return (s, t) if 0 <= s < 1 and 0 <= t < 1 else None


def _pass(curve: int, place: int, share: float, a: Point, b: Point) -> Pass:
    x, y, z = (p + (q - p) * share for p, q in zip(a, b, strict=True))
    return Pass(curve, place + share, x, y, z, b[0] - a[0], b[1] - a[1])


def passes(curves: Sequence[Curve], names: str) -> list[str]:
    """Return for each curve what it meets: "O" or "U" and the other's name, as in "Ob Ub"."""
    met: list[list[tuple[float, str]]] = [[] for _ in curves]
    for crossing in crossings(curves):
        over, under = crossing.over, crossing.under
        met[over.curve].append((over.at, "O" + names[under.curve]))
        met[under.curve].append((under.at, "U" + names[over.curve]))
    return [" ".join(name for _, name in sorted(of_one)) for of_one in met]


def closed(*curves: Curve, far: float = 60.0) -> list[Point]:
    """Return curves joined end to end into one ring, each join far outside of them.

    An end first runs on in its own direction, then to the left or right edge it is nearest to,
    and round. Only ends that point out of the figure may be joined like this.
    """
    ring: list[Point] = []
    level = 0
    for number, curve in enumerate(curves):
        following = curves[(number + 1) % len(curves)]
        ring += curve
        level += 1
        out = _run_on(curve[-2], curve[-1], far)
        back = _run_on(following[1], following[0], far)
        # Round behind everything, each join on a plane of its own.
        z = -far * level
        ring += [out, (out[0], out[1], z), (back[0], back[1], z), back]
    return [*ring, ring[0]]


def _run_on(before: Point, end: Point, far: float) -> Point:
    share = far / dist(before, end)
    x, y, z = (q + (q - p) * share for p, q in zip(before, end, strict=True))
    return x, y, z


def tilted(curve: Curve) -> list[Point]:
    """Return a curve turned a little, so that no two of its parts lie exactly in line."""
    a, b = 0.37, 0.23
    turned = ((x, y * cos(a) - z * sin(a), y * sin(a) + z * cos(a)) for x, y, z in curve)
    return [(x * cos(b) + z * sin(b), y, z * cos(b) - x * sin(b)) for x, y, z in turned]


def alexander(rings: Sequence[Curve], t: Fraction) -> Fraction:
    """Return the Alexander polynomial of a link at t, up to its sign and a power of t.

    The arcs between undercrossings are the unknowns and each crossing gives a row (J. W.
    Alexander, "Topological invariants of knots and links", 1928); a minor is the polynomial, and
    at t = -1 it is the determinant.
    """
    met = crossings([tilted(ring) for ring in rings])
    starts = sorted((c.under.curve, c.under.at) for c in met)
    if not met:
        return Fraction(1 if len(rings) == 1 else 0)
    arcs = {start: number for number, start in enumerate(starts)}

    def arc(of: Pass) -> int:
        own = [s for s in starts if s[0] == of.curve]
        if not own:
            raise ValueError("a ring that never goes under")
        before = [s for s in own if s[1] < of.at]
        return arcs[before[-1] if before else own[-1]]

    rows = []
    for crossing in met:
        row = [Fraction(0)] * len(starts)
        incoming, outgoing = arc(crossing.under), arcs[crossing.under.curve, crossing.under.at]
        if crossing.sign < 0:
            incoming, outgoing = outgoing, incoming
        row[arc(crossing.over)] += 1 - t
        row[incoming] += t
        row[outgoing] -= 1
        rows.append(row)
    value = abs(_determinant([row[1:] for row in rows[1:]]))
    while value and t > 1 and value.numerator % t == 0:
        value /= t
    while value and t > 1 and value.denominator % t == 0:
        value *= t
    return value


def _determinant(rows: list[list[Fraction]]) -> Fraction:
    result = Fraction(1)
    for column in range(len(rows)):
        pivot = next((r for r in range(column, len(rows)) if rows[r][column]), None)
        if pivot is None:
            return Fraction(0)
        if pivot != column:
            rows[column], rows[pivot] = rows[pivot], rows[column]
            result = -result
        result *= rows[column][column]
        for r in range(column + 1, len(rows)):
            share = rows[r][column] / rows[column][column]
            if share:
                rows[r] = [p - share * q for p, q in zip(rows[r], rows[column], strict=True)]
    return result


def linking(a: Curve, b: Curve) -> Fraction:
    """Return the linking number of two rings: half the signs of their crossings."""
    return Fraction(
        sum(c.sign for c in crossings([tilted(a), tilted(b)]) if c.over.curve != c.under.curve), 2
    )
