"""How many whole leaders a rack makes: leaders and a rack in; for each a number and a bound out."""

from collections.abc import Callable, Sequence
from functools import cache

from msgspec import Struct

from tagend.cards.batches.budget import Budget
from tagend.cards.batches.line_groups import LineGroup, line_groups
from tagend.cards.batches.packing import is_packable, packed
from tagend.cards.batches.spool_filling import total
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack

STEPS = 500_000  # that the search may take


class WholeLeaders(Struct, frozen=True):
    """The most of one leader that a rack makes."""

    number: int
    at_most: int  # above the number only where the search has used up its steps
    lacking: tuple[Line, ...]  # what there is too little of for one more


def whole_leaders(
    leaders: Sequence[Leader], rack: Rack, steps: int = STEPS
) -> list[WholeLeaders | None]:
    """Return what the rack makes of each leader by itself; None of one that takes no line."""
    budget = Budget(steps)
    return [
        _whole(line_groups([leader], rack), budget.part(len(leaders) - place))
        for place, leader in enumerate(leaders)
    ]


def largest(holds: Callable[[int], bool], low: int, high: int) -> int:
    """Return the largest number up to `high` for which something holds that holds for `low`.

    What holds for a number must hold for every smaller one.
    """
    if low >= high or holds(high):
        return max(low, high)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def _whole(groups: Sequence[LineGroup], budget: Budget) -> WholeLeaders | None:
    each = [_most_of(group, budget.part(len(groups) - place)) for place, group in enumerate(groups)]
    if not each:
        return None
    number = min(most for most, _ in each)
    short = [group for group, (most, _) in zip(groups, each, strict=True) if most == number]
    lines = dict.fromkeys(size.line for group in short for size in group.sizes)
    return WholeLeaders(number, min(bound for _, bound in each), tuple(lines))


def _most_of(group: LineGroup, budget: Budget) -> tuple[int, int]:
    """Return how many leaders one group of line makes, and a bound."""
    one, bins = group.wanted((1,)), group.bins

    @cache
    def packable(number: int) -> bool | None:
        return is_packable(bins, tuple(number * count for count in one), budget.part(4))

    limit = sum(bins.rooms) // total(bins.lengths, one)
    wanted = tuple(limit * count for count in one)
    left = packed(bins, wanted, budget.part(2)).left
    number = limit - max(-(-over // count) for over, count in zip(left, one, strict=True))
    # So many there are for certain; but it must be found again when a batch is cut.
    step = 1
    while number > 0 and budget.left > 0 and not packable(number):
        number, step = max(number - step, 0), 2 * step
    number = largest(lambda number: packable(number) is True, number, limit)
    return number, largest(lambda number: packable(number) is not False, number, limit)
