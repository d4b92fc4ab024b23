"""Pieces packed onto spools: how many of each size in; what each spool gives, and a bound, out.

One spool after the other is filled as full as can be, which mostly leaves no more than a bound
says must be left. Where it does, a search goes through the fillings of each spool, without those
that leave too much for the later spools, and without what has been looked at before.
"""

from collections import defaultdict
from collections.abc import Sequence
from functools import lru_cache
from itertools import accumulate

from msgspec import Struct

from tagend.cards.batches.budget import Budget, Spent
from tagend.cards.batches.spool_filling import (
    Filling,
    cost,
    fillings,
    longest_first,
    rest,
    room_within,
    sums,
    total,
)

_TABLE = 1 << 24  # bits of a table of sums
_STACK = 1 << 29  # bits of the tables that a search holds at once: 64 MB
_DEEPEST = 300  # spools and sizes that a search goes through


class Bins(Struct, frozen=True):
    """What pieces are packed into; all lengths are in the same whole parts."""

    lengths: tuple[int, ...]  # of each size, the longest first
    rooms: tuple[int, ...]  # of each spool
    fits: tuple[frozenset[int], ...]  # the sizes that each spool may give


class Packing(Struct, frozen=True):
    """What each spool gives, what is left over, and the length that must be left over."""

    fillings: tuple[Filling, ...]
    left: Filling
    least: int


def packed(bins: Bins, wanted: Filling, budget: Budget) -> Packing:
    """Return a packing that leaves as little length as can be, or as the budget finds."""
    chosen: Sequence[Filling]
    least = least_left(bins, wanted, budget)
    ways = [_one_after_the_other(bins, wanted, each) for each in (Budget(0), budget)]
    chosen = min(ways, key=lambda way: total(bins.lengths, rest(wanted, way)))
    if total(bins.lengths, rest(wanted, chosen)) > least:
        chosen, is_best = _better(bins, wanted, chosen, least, budget.part(2))
        least = total(bins.lengths, rest(wanted, chosen)) if is_best else least
    return Packing(tuple(chosen), rest(wanted, chosen), least)


def is_packable(bins: Bins, wanted: Filling, budget: Budget) -> bool | None:
    """Return whether the spools give all that is wanted; None where the budget does not tell."""
    if budget.left <= 0:
        return None
    if least_left(bins, wanted, budget):
        return False
    packing = packed(bins, wanted, budget)
    return (False if packing.least else None) if any(packing.left) else True


def least_left(bins: Bins, wanted: Filling, budget: Budget) -> int:
    """Return a length that every packing leaves: no spool gives more than its fullest filling.

    Sizes that come from the same spools are looked at by themselves, and all together.
    """

    def left_of(pieces: Filling) -> int:
        return max(total(bins.lengths, pieces) - sum(_most_given(bins, pieces, budget)), 0)

    alike = _alike(len(wanted), bins.fits)
    if len(alike) == 1 or len(alike) * len(bins.fits) > budget.left:
        return left_of(wanted)
    each = sum(left_of(_among(wanted, sizes)) for sizes in alike)
    return max(each, left_of(wanted))


@lru_cache
def _alike(sizes: int, fits: tuple[frozenset[int], ...]) -> list[frozenset[int]]:
    homes: defaultdict[tuple[int, ...], list[int]] = defaultdict(list)
    for size in range(sizes):
        homes[tuple(spool for spool, those in enumerate(fits) if size in those)].append(size)
    return list(map(frozenset, homes.values()))


def _most_given(bins: Bins, wanted: Filling, budget: Budget) -> list[int]:
    """Return for each spool a length that it gives no more than, were it the only one."""
    budget.charge(1 + len(bins.rooms) // 4)
    sizes = [size for size, count in enumerate(wanted) if count]
    most: dict[frozenset[int], dict[int, int]] = defaultdict(dict)
    for room, fits in zip(bins.rooms, bins.fits, strict=True):
        most[fits][room] = 0
    for fits, rooms in most.items():
        if fits.isdisjoint(sizes):
            continue
        budget.charge(1 + len(wanted) // 8)
        pieces = _among(wanted, fits)
        high = total(bins.lengths, pieces)
        rooms |= {room: min(room, high) for room in rooms}
        part = max((room for room in rooms if room < high), default=0)
        if 0 < part <= _TABLE and cost(pieces, part) <= budget.left // 4:
            made = sums(bins.lengths, pieces, part, budget)[0]
            for room in rooms:
                if room < high:
                    rooms[room] = (made & ((1 << (room + 1)) - 1)).bit_length() - 1
    return [most[fits][room] for room, fits in zip(bins.rooms, bins.fits, strict=True)]


def _one_after_the_other(bins: Bins, wanted: Filling, budget: Budget) -> list[Filling]:
    """Return a filling for each spool, as full as what the spools before it leave allows."""
    budget.charge(len(bins.rooms) * (10 + len(wanted)))
    chosen = []
    for place, (room, fits) in enumerate(zip(bins.rooms, bins.fits, strict=True)):
        share = budget.part(2 * (len(bins.rooms) - place))
        chosen.append(_full(bins.lengths, _among(wanted, fits), room, share))
        wanted = rest(wanted, chosen[-1:])
    return chosen


def _full(lengths: Sequence[int], pieces: Filling, room: int, budget: Budget) -> Filling:
    """Return a filling with no room for one more piece, as full as the budget finds.

    For a table that it does not suffice for, lengths are rounded up to coarser parts.
    """
    plain = longest_first(lengths, pieces, room)
    bits = min(_TABLE, room_within(budget.left // 3, pieces))
    if plain == pieces or not bits:
        return plain
    part = max(-(-room // bits), 1)
    coarse = [-(-length // part) for length in lengths]
    try:
        need = sums(coarse, pieces, room // part, budget)[0].bit_length() - 1
        found = next(fillings(coarse, pieces, need, need, budget))
    except Spent:
        return plain
    over = room - total(lengths, found)
    top = longest_first(lengths, rest(pieces, [found]), over)
    found = tuple(map(sum, zip(found, top, strict=True)))
    return max(plain, found, key=lambda filling: total(lengths, filling))


def _better(
    bins: Bins, wanted: Filling, best: Sequence[Filling], least: int, budget: Budget
) -> tuple[Sequence[Filling], bool]:
    """Return the best packing that a search finds, and whether no other is better."""
    lengths, spools = bins.lengths, len(bins.rooms)
    high = total(lengths, rest(wanted, best))
    longest = min(max(bins.rooms, default=0), total(lengths, wanted))
    if spools + len(wanted) > _DEEPEST or longest * spools * len(wanted) > _STACK:
        return best, False
    most = _most_given(bins, wanted, budget)
    later = [*accumulate(reversed(most), initial=0)][::-1]  # what a spool and those after it give
    seen: set[tuple[int, Filling]] = set()

    def go_on(left: Filling, chosen: tuple[Filling, ...]) -> None:
        nonlocal best, high
        spool = len(chosen)
        budget.spend(len(left))
        if spool == spools:
            best, high = chosen, total(lengths, left)
        elif (spool, left) not in seen:
            seen.add((spool, left))
            pieces = _among(left, bins.fits[spool])
            room = min(bins.rooms[spool], total(lengths, pieces))
            over = total(lengths, left) - later[spool + 1]  # if the spool gave nothing
            for filling in fillings(lengths, pieces, max(over - high + 1, 0), room, budget):
                if high > max(least, over - total(lengths, filling)):
                    go_on(rest(left, [filling]), (*chosen, filling))

    try:
        go_on(wanted, ())
    except Spent:
        return best, False
    return best, True


def _among(pieces: Filling, sizes: frozenset[int]) -> Filling:
    return tuple(count if size in sizes else 0 for size, count in enumerate(pieces))
