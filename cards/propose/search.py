"""The best spools for a taper: a net of strands and plans of lengths in, the best paths out."""

from collections import defaultdict
from collections.abc import Iterable
from typing import NamedTuple

from tagend.cards.propose.lengths import Plan, Plans
from tagend.cards.propose.net import Net, least_cost, step_cost
from tagend.cards.propose.rooms import Rooms

Edge = tuple[int | None, int]  # the last strand of a path and the one above it


class Path(NamedTuple):
    """A way down the net; the lower cost is better, and of equal ones the first in the rack."""

    cost: int
    strands: tuple[int, ...]
    room: int  # marks that its pieces make at the most, up to the leader's total


def best_paths(net: Net, rooms: Rooms, plans: Plans, most: int) -> list[Path]:
    """Return the best paths, at most so many, of which the spools have enough line.

    Paths of more and more knots are searched until none can be better than those found, or they
    have twice the fewest knots and one. Where there is a path, there is one of so few: two steps
    in a row that together are no larger than the largest could be one.
    """
    found: list[Path] = []
    for knots in range(net.fewest, 2 * net.fewest + 2):
        plan = plans.of(knots + 1)
        enough = len(found) == most and least_cost(net, knots) > found[-1].cost
        if plan is None or enough:
            break
        found = sorted([*found, *_paths(net, rooms, plan, most)])[:most]
    return found


def _paths(net: Net, rooms: Rooms, plan: Plan, most: int) -> list[Path]:
    """Return the best paths of as many sections as the plan has.

    Dynamic programming over the joints, since how much a spool gives depends on both its knots:
    for each joint and place in the leader the paths that may become one of the best are kept.
    """
    sections = len(plan.lengths)
    to_end = _steps_to_end(net)
    at: dict[Edge, list[Path]] = {(None, start): [Path(0, (start,), 0)] for start in net.starts}
    for place in range(sections - 1):
        further: defaultdict[Edge, list[Path]] = defaultdict(list)
        for (above, strand), paths in at.items():
            for below in net.below[strand]:
                if sections - 2 - place not in to_end[below]:
                    continue
                room = rooms.room(above, strand, below)
                if room >= plan.least[place]:
                    cost = step_cost(net, strand, below)
                    further[strand, below] += (_longer(p, below, cost, room, plan) for p in paths)
        at = {edge: _promising(paths, most) for edge, paths in further.items()}
    whole = []
    for (above, strand), paths in at.items():
        room = rooms.room(above, strand, None)
        if strand in net.ends and room >= plan.least[-1]:
            whole += [path for path in paths if path.room + room >= plan.total]
    return sorted(whole)[:most]


def _longer(path: Path, below: int, cost: int, room: int, plan: Plan) -> Path:
    return Path(path.cost + cost, (*path.strands, below), min(path.room + room, plan.total))


def _promising(paths: Iterable[Path], most: int) -> list[Path]:
    """Leave out each path that so many others beat both in cost and in room.

    Whatever follows it may follow the others too, so that it is never among the best.
    """
    kept: list[Path] = []
    for path in sorted(paths):
        if sum(other.room >= path.room for other in kept) < most:
            kept.append(path)
    return kept


def _steps_to_end(net: Net) -> list[frozenset[int]]:
    """Return for each strand in how many steps an end can be reached from it."""
    steps: list[frozenset[int]] = [frozenset()] * len(net.strands)
    for place in reversed(range(len(net.strands))):
        if place in net.ends:
            steps[place] = frozenset({0})
        else:
            steps[place] = frozenset(n + 1 for below in net.below[place] for n in steps[below])
    return steps
