"""How many whole leaders the spools make: kinds of line in; counts and mixes out, exact."""

from collections.abc import Callable, Sequence

from tagend.cards.batches.kinds import Kind
from tagend.cards.batches.packing import packed

Numbers = tuple[int, ...]  # of each leader


def short_kinds(kinds: Sequence[Kind], numbers: Numbers) -> list[Kind]:
    """Return the kinds of line of which the spools have not enough for so many of each."""
    return [kind for kind in kinds if packed(kind.bins, kind.wanted(numbers)) is None]


def most_of(kinds: Sequence[Kind], leader: int, numbers: Numbers) -> int | None:
    """Return the most of one leader that the spools make beside the others' `numbers`.

    The spools must have enough for those. None for a leader that takes no line at all.
    """
    alone = tuple(int(place == leader) for place in range(len(numbers)))
    limits = [_limit(kind, kind.wanted(alone)) for kind in kinds if any(kind.wanted(alone))]
    if not limits:
        return None
    return largest(
        lambda number: not short_kinds(kinds, with_number(numbers, leader, number)), 0, min(limits)
    )


def largest(holds: Callable[[int], bool], low: int, high: int) -> int:
    """Return the largest number up to `high` for which something holds that holds for `low`.

    What holds for a number must hold for every smaller one.
    """
    if low >= high or holds(high):
        return max(low, high)
    while high - low > 1:
        middle = (low + high) // 2
        if holds(middle):
            low = middle
        else:
            high = middle
    return low


def with_number(numbers: Numbers, place: int, number: int) -> Numbers:
    """Return the numbers with another in one place."""
    return (*numbers[:place], number, *numbers[place + 1 :])


def _limit(kind: Kind, one: Sequence[int]) -> int:
    """Return how many leaders no spools can exceed: for each size, what each spool gives whole."""
    bins = kind.bins
    return min(
        sum(
            room // length for room, fits in zip(bins.rooms, bins.fits, strict=True) if size in fits
        )
        // count
        for size, (length, count) in enumerate(zip(bins.lengths, one, strict=True))
        if count
    )
