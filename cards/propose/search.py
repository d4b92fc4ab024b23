"""The best spools for a taper: a net of strands in; the best ways down it out."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tagend.cards.propose.costs import Cost
from tagend.cards.propose.lengths import Plan, plan_of
from tagend.cards.propose.net import Net, Places

Edge = tuple[int | None, int]  # the last strand of a way and the one above it


@dataclass(frozen=True, slots=True)
class Way:
    """A way down the net."""

    cost: Cost
    strands: tuple[int, ...]
    room: int  # marks that its pieces make at the most, up to the leader's total


def best_ways(net: Net, costs: Mapping[Places, Cost], most: int) -> list[Way]:
    """Return the best ways, at most so many, of which the spools have enough line.

    Ways of more and more knots are searched until none can be better than those found, or they
    have twice the fewest knots and one. Where there is a way, there is one of so few: two steps
    in a row that together are no larger than the largest could be one.
    """
    found: list[Way] = []
    if not net.starts or not net.ends:
        return found
    bought = net.links.bought is not None
    for knots in range(0 if bought else 1, 2 * net.fewest + 2):
        plan = plan_of(knots + 1, net.wish.shares, net.tape, bought)
        enough = len(found) == most and Cost(knots=knots + net.knots_beside) > found[-1].cost
        if plan is None or enough:
            break
        found = _best_first([*found, *_ways(net, costs, plan, most)])[:most]
    return found


def _ways(net: Net, costs: Mapping[Places, Cost], plan: Plan, most: int) -> list[Way]:
    """Return the best ways of as many sections as the plan has.

    Dynamic programming over the joints, since how much a spool gives depends on both its knots:
    for each joint and place in the leader the ways that may become one of the best are kept.
    """
    to_end = _steps_to_end(net)
    at: dict[Edge, list[Way]] = {
        (None, start): [Way(costs[None, start], (start,), 0)] for start in net.starts
    }
    for steps_left, least in zip(reversed(range(len(plan.least) - 1)), plan.least, strict=False):
        further: defaultdict[Edge, list[Way]] = defaultdict(list)
        for (above, strand), ways in at.items():
            for below in net.below[strand]:
                if steps_left not in to_end[below]:
                    continue
                room = net.room(above, strand, below)
                if room >= least:
                    step = below, costs[strand, below], room
                    further[strand, below] += (_longer(way, *step, plan.total) for way in ways)
        at = {edge: _promising(ways, most) for edge, ways in further.items()}
    whole = [
        way
        for (above, strand), ways in at.items()
        if strand in net.ends and (room := net.room(above, strand, None)) >= plan.least[-1]
        for way in ways
        if way.room + room >= plan.total
    ]
    return _best_first(whole)[:most]


def _longer(way: Way, below: int, cost: Cost, room: int, total: int) -> Way:
    return Way(way.cost + cost, (*way.strands, below), min(way.room + room, total))


def _promising(ways: Iterable[Way], most: int) -> list[Way]:
    """Leave out each way that so many others beat in its worst joint, in its sums and in room.

    Whatever follows it may follow the others too, so that it is never among the best. Those kept
    before it have no worse a joint, since that comes first in their order.
    """
    kept: list[Way] = []
    for way in _best_first(ways):
        sums = way.cost.sums, way.strands
        better = (
            (other.cost.sums, other.strands) <= sums for other in kept if other.room >= way.room
        )
        if sum(better) < most:
            kept.append(way)
    return kept


def _best_first(ways: Iterable[Way]) -> list[Way]:
    """Return the ways of lower cost first; of equal ones the first in the rack."""
    return sorted(ways, key=lambda way: (way.cost, way.strands))


def _steps_to_end(net: Net) -> list[frozenset[int]]:
    """Return for each strand in how many steps an end can be reached from it."""
    steps: list[frozenset[int]] = [frozenset()] * len(net.strands)
    for place in reversed(range(len(net.strands))):
        if place in net.ends:
            steps[place] = frozenset({0})
        else:
            steps[place] = frozenset(n + 1 for below in net.below[place] for n in steps[below])
    return steps
