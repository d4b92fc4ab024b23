"""The best spools for a taper: nets of strands in; the best ways down them out."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from heapq import heapify, heappop, heappush
from itertools import count, islice
from operator import ge

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.propose.costs import Cost, StepCosts
from tagend.cards.propose.lengths import Plan, plan_of
from tagend.cards.propose.net import Net
from tagend.layouts.base.faults import refused

STEPS = 15_000  # that ways are lengthened by, at the most

Ahead = Callable[[int, int], Cost | None]  # what a strand and so many steps to an end cost at least


class Way(Struct, frozen=True):
    """A way down a net, whole or as far as it goes."""

    net: Net
    plan: Plan
    cost: Cost
    strands: tuple[int, ...] = ()

    @property
    def to_go(self) -> int:
        """The strands that it lacks."""
        return len(self.plan.least) - len(self.strands)

    def room(self) -> int | None:
        """Return the marks that its pieces make at the most, but one whose lower end is open.

        None where they are not enough.
        """
        rooms = self.net.rooms(self.strands, whole=not self.to_go)
        enough = all(map(ge, rooms, self.plan.least))
        room = min(sum(rooms), self.plan.total)
        return room if enough and (self.to_go or room == self.plan.total) else None


def best_ways(nets: Sequence[Net], costs: StepCosts, most: int) -> list[Way]:
    """Return the best ways, at most so many, of which the spools have enough line.

    The nets have the same strands and steps. A way that differs from a better one in its guard
    alone is left out. None has more than twice the fewest knots and one: where there is a way,
    there is one of so few, in which no two steps in a row are together no larger than one may be.
    Raises `Refused` where the search ends before it finds any.
    """
    return list(islice(_unlike(_in_order(nets, costs, most)), most)) if nets else []


def _unlike(ways: Iterable[Way]) -> Iterator[Way]:
    """Yield the ways that do not take the strands of one before, but for the guard."""
    seen: set[object] = set()
    for way in ways:
        ending = way.net.endings[way.strands[-1] - way.net.body]
        taken = way.strands[:-1], ending.sighter, ending.tippet
        if taken not in seen:
            seen.add(taken)
            yield way


def _in_order(nets: Sequence[Net], costs: StepCosts, most: int) -> Iterator[Way]:
    """Yield whole ways, the better first; of equal ones the first in the rack.

    The way that may become the best is lengthened, by the least that all it lacks can cost (A*): so
    whatever is yielded is the best that was left, though the steps may end before the last.
    """
    ahead, number, steps, found = _ahead(nets[0], costs), count(), 0, 0
    heap = [(way.cost, way.strands, next(number), way) for way in _unbegun(nets)]
    heapify(heap)
    kept: defaultdict[object, list[tuple[Way, int]]] = defaultdict(list)
    while heap and steps < STEPS:
        *_, way = heappop(heap)
        if (room := way.room()) is None:
            continue
        if not way.to_go:
            found += 1
            yield way
            continue
        others = kept[id(way.plan), way.to_go, way.strands[-2:]]
        if not _is_beaten(way, room, others, most):
            others.append((way, room))
            for least, longer in _lengthened(way, costs, ahead):
                heappush(heap, (least, longer.strands, next(number), longer))
                steps += 1
    if heap and not found:
        raise refused(
            f"no taper was found in {STEPS:,} steps of the search",
            "leave out of the rack what has little line, or allow a smaller step",
        )


def _unbegun(nets: Sequence[Net]) -> Iterator[Way]:
    """Yield a way without strands for each net and number of knots, at the least these cost."""
    for net in nets:
        for knots in range(0 if net.bought else 1, 2 * net.fewest + 2):
            if plan := plan_of(knots + 1, net.wish.shares, net.tape, bool(net.bought)):
                yield Way(net, plan, Cost(knots=knots + net.knots_beside))


def _lengthened(way: Way, costs: StepCosts, ahead: Ahead) -> Iterator[tuple[Cost, Way]]:
    """Yield the way with each next strand, behind the least that it costs as a whole."""
    net, plan, to_go = way.net, way.plan, way.to_go - 1
    last, before = (way.strands[-1], way.cost) if way.strands else (None, Cost())
    for below in net.starts if last is None else net.below[last]:
        if (rest := ahead(below, to_go)) is not None:
            cost = before + costs(last, below)
            yield cost + rest, Way(net, plan, cost, (*way.strands, below))


def _is_beaten(way: Way, room: int, others: Iterable[tuple[Way, int]], most: int) -> bool:
    """Whether so many others that end alike are as good, in their sums and in room.

    Whatever follows it may follow them too, so that it is never among the best. They came before
    it, so that with the same rest their worst joint is no worse.
    """
    sums = way.cost.sums, way.strands
    better = ((o.cost.sums, o.strands) <= sums for o, has in others if has >= room)
    return sum(better) >= most


def _ahead(net: Net, costs: StepCosts) -> Ahead:
    """Return what a strand and so many steps to an end cost at least, or None where none lead."""

    @cache
    def ahead(place: int, steps: int) -> Cost | None:
        if steps == 0:
            return Cost() if place >= net.body else None
        rests = ((below, ahead(below, steps - 1)) for below in net.below[place])
        ways = [costs(place, below) + rest for below, rest in rests if rest is not None]
        if not ways:
            return None
        return replace(min(ways, key=lambda cost: cost.sums), worst=min(c.worst for c in ways))

    return ahead
