"""The best mix of leaders that a rack makes: orders and a rack in; numbers and a bound out."""

from collections.abc import Sequence

from msgspec import Struct

from tagend.cards.batches.batch import Order
from tagend.cards.batches.budget import Budget, Spent
from tagend.cards.batches.line_groups import LineGroup, line_groups
from tagend.cards.batches.mix_bound import relaxed
from tagend.cards.batches.packing import is_packable
from tagend.cards.batches.spool_filling import Filling, total
from tagend.cards.batches.whole_leaders import largest, whole_leaders
from tagend.cards.practice.rack_file import Rack

STEPS = 600_000  # that the search may take
_FINEST = 1 << 27  # parts of a share: two shares of 10,000 or fewer differ by more than one
_STAGES = 64  # from one mix to another
_ROUNDED = 1e-6  # what a number may be short of a whole one for want of digits

Counts = tuple[int, ...]  # of each leader


class Mix(Struct, frozen=True):
    """Whole leaders of each order."""

    numbers: Counts
    at_most: int  # leaders of any mix; above their sum only where the search used up its steps


def best_mix(orders: Sequence[Order], rack: Rack, steps: int = STEPS) -> Mix:
    """Return the mix with the most whole leaders.

    Of mixes with as many, that in which the worst served gets the largest share of what was asked
    of it; of these, that with most of the first leader, then of the second. Where the steps are
    used up before that is known, the best found.
    """
    asked = tuple(order.count for order in orders)
    leaders = [order.leader for order in orders]
    alone = whole_leaders(leaders, rack, steps // 4)
    high = tuple(min(n, n if m is None else m.at_most) for n, m in zip(asked, alone, strict=True))
    search = _MixSearch(line_groups(leaders, rack), len(asked), steps)
    numbers, at_most = search.most(high)
    return Mix(search.shared(numbers, asked, high), at_most)


class _MixSearch:
    """What decides whether the spools make a mix, and what is known of it already."""

    def __init__(self, groups: Sequence[LineGroup], leaders: int, steps: int) -> None:
        each = [tuple(int(at == leader) for at in range(leaders)) for leader in range(leaders)]
        self.groups = groups
        self.budget = Budget(steps)
        self.takes = [[total(g.bins.lengths, g.wanted(one)) for one in each] for g in groups]
        self.known: dict[tuple[int, Filling], bool | None] = {}
        self.is_proven = True  # no answer since this was set was for want of steps

    def relaxed(self, low: Counts, high: Counts, budget: Budget) -> tuple[list[float], int]:
        """Return a mix within bounds in fractions, and how many leaders one has at the most."""
        left = [
            sum(group.bins.rooms) - total(takes, low)
            for group, takes in zip(self.groups, self.takes, strict=True)
        ]
        if any(rest < 0 for rest in left):
            return [], -1
        more = [most - least for least, most in zip(low, high, strict=True)]
        numbers, bound = relaxed(self.takes, left, more, budget)
        return [n + least for n, least in zip(numbers, low, strict=True)], sum(low) + bound

    def makes(self, numbers: Counts) -> bool:
        """Return whether the spools are known to make so many of each."""
        for place, group in enumerate(self.groups):
            wanted = group.wanted(numbers)
            key = place, wanted
            self.budget.charge(1 + len(wanted))
            if key not in self.known:
                self.known[key] = is_packable(group.bins, wanted, self.budget.part(16))
            if not self.known[key]:
                self.is_proven = self.is_proven and self.known[key] is not None
                return False
        return True

    def rounded(self, low: Counts, high: Counts) -> Counts | None:
        """Return a mix within bounds near the best in fractions; None where `low` is too many.

        Of the leaders that the fractions have more of, one after the other is rounded up.
        """
        if not _is_within(low, high) or not self.makes(low):
            return None
        while self.budget.left > 0:
            best = self.relaxed(low, high, self.budget)[0]
            low = self._toward(low, tuple(int(number + _ROUNDED) for number in best))
            over = [(best[at] - low[at], at) for at in range(len(low)) if low[at] < high[at]]
            if not over:
                break
            more, leader = max(over)
            up = _with_number(low, leader, low[leader] + max(round(more / 2), 1))
            if self.makes(up):
                low = up
            else:
                high = _with_number(high, leader, up[leader] - 1)
        return low

    def _toward(self, low: Counts, goal: Counts) -> Counts:
        """Return what the spools make on the way from one mix to another, in so many stages."""

        def mix_at(stage: int) -> Counts:
            return tuple(n + (m - n) * stage // _STAGES for n, m in zip(low, goal, strict=True))

        return mix_at(largest(lambda stage: self.makes(mix_at(stage)), 0, _STAGES))

    def most(self, high: Counts) -> tuple[Counts, int]:
        """Return a mix with the most leaders that is found, and how many any has at the most."""
        none = (0,) * len(high)
        at_most = self.relaxed(none, high, self.budget)[1]
        best = self.rounded(none, high) or none
        for number in range(at_most, sum(best), -1):
            if mix := self.tried(number, none, high):
                return mix, at_most
            if self.is_proven and number == at_most:
                at_most -= 1
        return best, at_most

    def shared(self, best: Counts, asked: Counts, high: Counts) -> Counts:
        """Return a mix of as many leaders, of which each gets its share of what was asked."""
        number = sum(best)

        def least(parts: int) -> Counts:
            return tuple(-(-parts * count // _FINEST) for count in asked)

        def is_served(parts: int) -> bool:
            nonlocal best
            low = least(parts)
            if _is_within(low, best):
                return True
            mix = self.tried(number, low, high) or self.rounded(low, high)
            if mix is None or sum(mix) < number:
                return False
            best = mix
            return True

        low = least(largest(is_served, 0, number * _FINEST // sum(asked)))
        return self.tried(number, low, high) or best

    def tried(self, number: int, low: Counts, high: Counts) -> Counts | None:
        """Return a mix of so many leaders, or None: that there is none, where `is_proven`."""
        self.is_proven = True
        try:
            return self._mix(number, low, high, self.budget.part(4))
        except Spent:
            self.is_proven = False
            return None

    def _mix(self, number: int, low: Counts, high: Counts, budget: Budget) -> Counts | None:
        """Return the mix of so many leaders, within bounds, with most of the first ones."""
        budget.spend(len(low))
        if not self._has_room(number, low, high, budget) or not self.makes(low):
            return None
        place = next((at for at, least in enumerate(low) if least < high[at]), None)
        if place is None:
            return low
        top = min(high[place], low[place] + number - sum(low))
        for n in range(top, low[place] - 1, -1):
            below = _with_number(high, place, n)
            mix = self._mix(number, _with_number(low, place, n), below, budget)
            if mix is not None or not self._has_room(number, low, below, budget):
                return mix
        return None

    def _has_room(self, number: int, low: Counts, high: Counts, budget: Budget) -> bool:
        """Return whether lengths alone allow a mix of so many leaders within bounds."""
        return (
            _is_within(low, high)
            and sum(low) <= number <= sum(high)
            and number <= self.relaxed(low, high, budget)[1]
        )


def _is_within(low: Counts, high: Counts) -> bool:
    return all(map(int.__le__, low, high))


def _with_number(numbers: Counts, place: int, number: int) -> Counts:
    return (*numbers[:place], number, *numbers[place + 1 :])
