"""The best mix of leaders that the spools make: kinds of line and asked numbers in, numbers out."""

import math
from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import cache

from cards.counting.kinds import Kind
from cards.counting.packing import total
from cards.counting.whole import Numbers, largest, most_of, short_kinds, with_number

Makes = Callable[[Numbers], bool]


def best_mix(kinds: Sequence[Kind], asked: Numbers) -> Numbers:
    """Return the most whole leaders of those asked for, at least one of each.

    Of mixes with as many leaders, that in which the worst served gets the largest share of what
    was asked of it; of these, that with most of the first leader, then of the second.
    """
    none = (0,) * len(asked)
    most = [most_of(kinds, leader, none) for leader in range(len(asked))]
    high = tuple(n if m is None else min(n, m) for n, m in zip(asked, most, strict=True))
    makes = cache(lambda numbers: not short_kinds(kinds, numbers))

    def mix(number: int, low: Numbers) -> Numbers | None:
        return _mix(kinds, makes, number, low, high)

    number = next(n for n in range(_bound(kinds, none, high), -1, -1) if mix(n, none) is not None)
    shares = sorted({Fraction(part, count) for count in asked for part in range(count + 1)})
    floors = [tuple(math.ceil(share * count) for count in asked) for share in shares]
    best = largest(lambda place: mix(number, floors[place]) is not None, 0, len(floors) - 1)
    return mix(number, floors[best]) or none


def _mix(
    kinds: Sequence[Kind], makes: Makes, number: int, low: Numbers, high: Numbers
) -> Numbers | None:
    """Return the mix of so many leaders, within bounds, with most of the first ones."""
    if any(least > most for least, most in zip(low, high, strict=True)):
        return None
    if not sum(low) <= number <= _bound(kinds, low, high) or not makes(low):
        return None
    place = next((at for at, least in enumerate(low) if least < high[at]), None)
    if place is None:
        return low
    top = min(high[place], low[place] + number - sum(low))
    top = largest(lambda count: makes(with_number(low, place, count)), low[place], top)
    tries = (
        _mix(kinds, makes, number, with_number(low, place, n), with_number(high, place, n))
        for n in range(top, low[place] - 1, -1)
    )
    return next((mix for mix in tries if mix is not None), None)


def _bound(kinds: Sequence[Kind], low: Numbers, high: Numbers) -> int:
    """Return how many leaders at the most the spools' lengths allow, all line taken together.

    In each kind of line those are added first that take least of it, which no mix can better.
    """
    return min((_bound_of(kind, low, high) for kind in kinds), default=sum(high))


def _bound_of(kind: Kind, low: Numbers, high: Numbers) -> int:
    count = range(len(low))
    takes = [total(kind.bins, kind.wanted([int(n == leader) for n in count])) for leader in count]
    left = sum(kind.bins.rooms) - total(kind.bins, kind.wanted(low))
    number = sum(low) if left >= 0 else -1
    for leader in sorted(count, key=takes.__getitem__):
        more = high[leader] - low[leader]
        if takes[leader]:
            more = max(min(more, left // takes[leader]), 0)
        number, left = number + more, left - more * takes[leader]
    return number
