"""What curves in space are, whatever their shape: crossings on the paper, and knot invariants."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan2, cos, dist, floor, pi, sin, tau

from cfractions import Fraction
from msgspec import Struct

Point = tuple[float, float, float]
Curve = Sequence[Point]


class Pass(Struct, frozen=True):
    """Where a curve goes over or under another: how far along it, in points, and its direction."""

    curve: int
    at: float
    x: float
    y: float
    z: float
    dx: float
    dy: float


class Crossing(Struct, frozen=True):
    over: Pass
    under: Pass

    @property
    def sign(self) -> int:
        return 1 if self.over.dx * self.under.dy - self.over.dy * self.under.dx > 0 else -1


def crossings(curves: Sequence[Curve]) -> list[Crossing]:
    """Return every place where the curves cross on the paper.

    They are seen a hair's breadth from the side, lest one crosses another exactly at a point.
    """
    curves = [[(x + 7e-4 * z, y + 11e-4 * z, z) for x, y, z in curve] for curve in curves]
    cells: dict[tuple[int, int], list[tuple[int, int]]] = defaultdict(list)
    found = []
    for number, curve in enumerate(curves):
        for place, (a, b) in enumerate(pairwise(curve)):
            met = set()
            for cell in _cells(a, b):
                met.update(cells[cell])
                cells[cell].append((number, place))
            for other, there in sorted(met):
                c, d = curves[other][there], curves[other][there + 1]
                hit = _meet(a, b, c, d)
                if hit is None or (other == number and abs(there - place) < 2):
                    continue
                p, q = _pass(number, place, hit[0], a, b), _pass(other, there, hit[1], c, d)
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
    """Return what each curve meets from its first point on: over or under, and what: "Ob Ub"."""
    met: list[list[tuple[float, str]]] = [[] for _ in curves]
    for crossing in crossings(curves):
        over, under = crossing.over, crossing.under
        met[over.curve].append((over.at, "O" + names[under.curve]))
        met[under.curve].append((under.at, "U" + names[over.curve]))
    return [" ".join(name for _, name in sorted(of_one)) for of_one in met]


def turns(curve: Curve) -> float:
    """Return how often a curve goes round the x axis, right-handed when it moves along it."""
    total = 0.0
    for (_, y1, z1), (_, y2, z2) in pairwise(curve):
        total += (atan2(z2, y2) - atan2(z1, y1) + pi) % tau - pi
    return total / tau


def closed(*curves: Curve, far: float = 60.0) -> list[Point]:
    """Return curves joined end to end into one ring, each join far outside and behind.

    Every end first runs on in its own direction, so that it must point out of the knot. Two rings
    must not run equally far.
    """
    ring: list[Point] = []
    for number, curve in enumerate(curves):
        following = curves[(number + 1) % len(curves)]
        (x1, y1, z1), (x2, y2, z2) = (
            _on(curve[-2], curve[-1], far),
            _on(following[1], following[0], far),
        )
        deep = -far * (number + 1)
        ring += [*curve, (x1, y1, z1), (x1, y1, deep), (x2, y2, deep), (x2, y2, z2)]
    return [*ring, ring[0]]


def _on(before: Point, end: Point, far: float) -> Point:
    share = far / dist(before, end)
    x, y, z = (q + (q - p) * share for p, q in zip(before, end, strict=True))
    return x, y, z


def tilted(curve: Curve) -> list[Point]:
    """Return a curve turned a little, so that no two parts lie exactly in line."""
    a, b = 0.37, 0.23
    turned = ((x, y * cos(a) - z * sin(a), y * sin(a) + z * cos(a)) for x, y, z in curve)
    return [(x * cos(b) + z * sin(b), y, z * cos(b) - x * sin(b)) for x, y, z in turned]


def alexander(*rings: Curve, t: int = -1) -> Fraction:
    """Return the Alexander polynomial of a link at t, whatever its sign and powers of t.

    Each arc between two undercrossings is an unknown and each crossing gives a row; a minor is
    the polynomial, and at t = -1 the link's determinant (J. W. Alexander, "Topological invariants
    of knots and links", 1928).
    """
    met = crossings([tilted(ring) for ring in rings])
    starts = sorted((crossing.under.curve, crossing.under.at) for crossing in met)
    if len({curve for curve, _ in starts}) < len(rings):
        return Fraction(int(not starts and len(rings) == 1))  # a ring that nothing goes over
    rows = []
    for crossing in met:
        row = [Fraction(0)] * len(starts)
        coming = _arc(starts, crossing.under)
        going = starts.index((crossing.under.curve, crossing.under.at))
        if crossing.sign < 0:
            coming, going = going, coming
        row[_arc(starts, crossing.over)] += 1 - t
        row[coming] += t
        row[going] -= 1
        rows.append(row)
    return _without_powers(abs(_determinant([row[1:] for row in rows[1:]])), t)


def _arc(starts: Sequence[tuple[int, float]], of: Pass) -> int:
    """Return the arc that a pass lies on: the one that began last before it, round the ring."""
    own = [number for number, (curve, _) in enumerate(starts) if curve == of.curve]
    return max((number for number in own if starts[number][1] < of.at), default=own[-1])


def _determinant(rows: list[list[Fraction]]) -> Fraction:
    result = Fraction(1)
    for column in range(len(rows)):
        pivot = next((row for row in range(column, len(rows)) if rows[row][column]), None)
        if pivot is None:
            return Fraction(0)
        rows[column], rows[pivot] = rows[pivot], rows[column]
        result *= rows[column][column]
        for row in range(column + 1, len(rows)):
            share = rows[row][column] / rows[column][column]
            if share:
                pairs = zip(rows[row], rows[column], strict=True)
                rows[row] = [p - share * q if q else p for p, q in pairs]
    return result


def _without_powers(value: Fraction, t: int) -> Fraction:
    while value and abs(t) > 1 and value.numerator % t == 0:
        value /= t
    while value and abs(t) > 1 and value.denominator % t == 0:
        value *= t
    return value


def linking(a: Curve, b: Curve) -> Fraction:
    """Return the linking number of two rings: half the signs of the crossings between them."""
    met = crossings([tilted(a), tilted(b)])
    return Fraction(sum(c.sign for c in met if c.over.curve != c.under.curve), 2)
