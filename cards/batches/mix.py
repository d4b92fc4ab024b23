"""The best mix of leaders that the spools make: kinds of line and asked numbers in, numbers out."""

import math
from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from tagend.cards.batches.kinds import Kind
from tagend.cards.batches.packing import total
from tagend.cards.batches.prices import bound
from tagend.cards.batches.whole import Numbers, largest, most_of, short_kinds, with_number


def best_mix(kinds: Sequence[Kind], asked: Numbers) -> Numbers:
    """Return the most whole leaders of those asked for, at least one of each.

    Of mixes with as many leaders, that in which the worst served gets the largest share of what
    was asked of it; of these, that with most of the first leader, then of the second.
    """
    none = (0,) * len(asked)
    most = [most_of(kinds, leader, none) for leader in range(len(asked))]
    high = tuple(n if m is None else min(n, m) for n, m in zip(asked, most, strict=True))
    problem = _problem(kinds, len(asked))
    number = next(
        n
        for n in range(problem.bound(none, high), -1, -1)
        if _mix(problem, n, none, high) is not None
    )
    shares = sorted({Fraction(part, count) for count in asked for part in range(count + 1)})

    def served(place: int) -> Numbers | None:
        low = tuple(math.ceil(shares[place] * count) for count in asked)
        return _mix(problem, number, low, high)

    best = largest(lambda place: served(place) is not None, 0, len(shares) - 1)
    return served(best) or none


class _Problem(NamedTuple):
    """What decides whether the spools make a mix."""

    makes: Callable[[Numbers], bool]
    takes: list[list[int]]  # the line that a leader takes, by kind and leader
    rooms: list[int]  # the line on the spools, by kind

    def left(self, numbers: Numbers) -> list[int]:
        """Return the line that so many leaders leave of each kind, below 0 where they lack it."""
        return [
            room - sum(take * number for take, number in zip(row, numbers, strict=True))
            for room, row in zip(self.rooms, self.takes, strict=True)
        ]

    def bound(self, low: Numbers, high: Numbers) -> int:
        """Return how many leaders at the most a mix within bounds can have."""
        left = self.left(low)
        if any(rest < 0 for rest in left):
            return -1
        more = [most - least for least, most in zip(low, high, strict=True)]
        return sum(low) + (bound(self.takes, left, more) if any(more) else 0)


def _problem(kinds: Sequence[Kind], leaders: int) -> _Problem:
    each = [tuple(int(at == leader) for at in range(leaders)) for leader in range(leaders)]
    return _Problem(
        makes=cache(lambda numbers: not short_kinds(kinds, numbers)),
        takes=[[total(kind.bins, kind.wanted(one)) for one in each] for kind in kinds],
        rooms=[sum(kind.bins.rooms) for kind in kinds],
    )


def _mix(problem: _Problem, number: int, low: Numbers, high: Numbers) -> Numbers | None:
    """Return the mix of so many leaders, within bounds, with most of the first ones."""
    if any(least > most for least, most in zip(low, high, strict=True)):
        return None
    if not sum(low) <= number <= problem.bound(low, high) or not problem.makes(low):
        return None
    place = next((at for at, least in enumerate(low) if least < high[at]), None)
    if place is None:
        return low
    top = min(high[place], low[place] + number - sum(low))
    top = largest(lambda n: problem.makes(with_number(low, place, n)), low[place], top)
    tries = (
        _mix(problem, number, with_number(low, place, n), with_number(high, place, n))
        for n in range(top, low[place] - 1, -1)
    )
    return next((mix for mix in tries if mix is not None), None)
