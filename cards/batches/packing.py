"""Pieces packed onto spools: how many of each size in; what each spool gives, and a bound, out.

One spool after the other is filled as full as can be, which mostly leaves no more than a bound
says must be left. Where it does, a search goes through the fillings of each spool, without those
that leave more than the later spools can take, and without what has failed before.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import accumulate
from typing import NamedTuple

from tagend.cards.batches.budget import Budget, Spent
from tagend.cards.batches.spool_filling import Filling, bits_within, cost, full, rest, sums, total

_TABLE = 1 << 24  # bits of a table of sums
_STACK = 1 << 29  # bits of the tables that a search holds at once: 64 MB


class Bins(NamedTuple):
    """What pieces are packed into; all lengths are in the same whole parts."""

    lengths: tuple[int, ...]  # of each size, the longest first
    rooms: tuple[int, ...]  # of each spool
    fits: tuple[frozenset[int], ...]  # the sizes that each spool may give


class Packing(NamedTuple):
    """What each spool gives, what is left over, and the length that must be left over."""

    fillings: tuple[Filling, ...]
    left: Filling
    least: int


def packed(bins: Bins, wanted: Filling, budget: Budget) -> Packing:
    """Return a packing that leaves as little length as can be, or as the budget finds."""
    least = guess = least_left(bins, wanted, budget)
    fillings = _one_after_the_other(bins, wanted, budget)
    high = total(bins.lengths, rest(wanted, fillings))
    while least < high:
        try:
            # What is left goes on one more spool, and a search tells how long it must be.
            found = _searched(_with_one_more(bins, guess), wanted, budget.part(4))
        except Spent:
            break
        if found is None:
            least = guess + 1
        else:
            *fillings, over = found
            high = total(bins.lengths, over)
        guess = (least + high) // 2
    return Packing(tuple(fillings), rest(wanted, fillings), least)


def is_packable(bins: Bins, wanted: Filling, budget: Budget) -> bool | None:
    """Return whether the spools give all that is wanted; None where the budget does not tell."""
    if budget.left <= 0:
        return None
    if least_left(bins, wanted, budget):
        return False
    packing = packed(bins, wanted, budget)
    if not any(packing.left):
        return True
    return False if packing.least else None


def least_left(bins: Bins, wanted: Filling, budget: Budget) -> int:
    """Return a length that every packing leaves: no spool gives more than its fullest filling.

    Sizes that come from the same spools are looked at by themselves, and all together.
    """
    alike = _alike(len(wanted), bins.fits)
    each = sum(_left_of(bins, _among(wanted, sizes), budget) for sizes in alike)
    return each if len(alike) == 1 else max(each, _left_of(bins, wanted, budget))


@lru_cache
def _alike(sizes: int, fits: tuple[frozenset[int], ...]) -> list[frozenset[int]]:
    homes = [tuple(size in those for those in fits) for size in range(sizes)]
    return [
        frozenset(size for size in range(sizes) if homes[size] == home)
        for home in dict.fromkeys(homes)
    ]


def _left_of(bins: Bins, wanted: Filling, budget: Budget) -> int:
    return max(total(bins.lengths, wanted) - sum(_most_given(bins, wanted, budget)), 0)


def _most_given(bins: Bins, wanted: Filling, budget: Budget) -> list[int]:
    """Return for each spool a length that it gives no more than, were it the only one."""
    most: dict[tuple[int, frozenset[int]], int] = {}
    for fits in dict.fromkeys(bins.fits):
        pieces = _among(wanted, fits)
        high = total(bins.lengths, pieces)
        rooms = {room for room, of in zip(bins.rooms, bins.fits, strict=True) if of == fits}
        most |= {(room, fits): min(room, high) for room in rooms}
        full_rooms = [room for room in rooms if 0 < room < high]
        steps = cost(pieces, max(full_rooms, default=0))
        if full_rooms and max(full_rooms) <= _TABLE and steps <= budget.left // 4:
            budget.charge(steps)
            made = sums(bins.lengths, [0] * len(pieces), pieces, max(full_rooms))[0]
            for room in full_rooms:
                most[room, fits] = (made & ((1 << (room + 1)) - 1)).bit_length() - 1
    return [most[spool] for spool in zip(bins.rooms, bins.fits, strict=True)]


def _one_after_the_other(bins: Bins, wanted: Filling, budget: Budget) -> list[Filling]:
    """Return a filling for each spool, as full as what the spools before it leave allows."""
    bits = min(_TABLE, bits_within(budget.left // 4, wanted, len(bins.rooms)))
    budget.charge(len(bins.rooms) * (10 + len(wanted)))
    fillings = []
    for room, fits in zip(bins.rooms, bins.fits, strict=True):
        pieces = _among(wanted, fits)
        if bits and total(bins.lengths, pieces) > room:
            budget.charge(cost(pieces, min(room, bits)))
        fillings.append(full(bins.lengths, pieces, room, bits))
        wanted = rest(wanted, fillings[-1:])
    return fillings


def _with_one_more(bins: Bins, room: int) -> Bins:
    every = frozenset(range(len(bins.lengths)))
    return bins._replace(rooms=(*bins.rooms, room), fits=(*bins.fits, every))


def _searched(bins: Bins, wanted: Filling, budget: Budget) -> list[Filling] | None:
    """Return a filling for each spool that together give all, or None where there are none.

    Raises `Spent` where the budget or the memory does not tell.
    """
    longest = min(max(bins.rooms), total(bins.lengths, wanted))
    if longest * len(bins.rooms) * len(wanted) > _STACK:
        raise Spent
    most = _most_given(bins, wanted, budget)
    later = [*accumulate(reversed(most), initial=0)][::-1]
    chosen: list[Filling] = []
    left = [wanted]  # before each spool that is being filled
    trying = [_fillings(bins, 0, wanted, later, budget)]
    failed: set[tuple[int, Filling]] = set()
    while trying:
        filling = next(trying[-1], None)
        if filling is None:
            trying.pop()
            failed.add((len(trying), left.pop()))
            del chosen[-1:]
            continue
        over = rest(left[-1], [filling])
        if len(trying) == len(bins.rooms):
            return [*chosen, filling]
        if (len(trying), over) not in failed:
            chosen.append(filling)
            left.append(over)
            trying.append(_fillings(bins, len(trying), over, later, budget))
    return None


def _fillings(
    bins: Bins, spool: int, left: Filling, later: Sequence[int], budget: Budget
) -> Iterator[Filling]:
    """Yield the fillings of a spool that leave no more than the later ones can take."""
    fits_later = frozenset[int]().union(*bins.fits[spool + 1 :])
    least = [0 if size in fits_later else count for size, count in enumerate(left)]
    most = _among(left, bins.fits[spool])
    room = min(bins.rooms[spool], total(bins.lengths, most))
    budget.spend(cost(most, room) + len(bins.rooms))
    if total(bins.lengths, least) > room or any(map(int.__gt__, least, most)):
        return
    made = sums(bins.lengths, least, most, room)

    def choices(size: int, need: int, room: int) -> Iterator[Filling]:
        if size == len(left):
            yield ()
            return
        length = bins.lengths[size]
        for count in range(min(most[size], room // length), least[size] - 1, -1):
            over, lack = room - count * length, max(need - count * length, 0)
            budget.spend(1 + (over >> 14))
            if over >= lack and (made[size + 1] >> lack) & ((1 << (over - lack + 1)) - 1):
                for others in choices(size + 1, lack, over):
                    yield (count, *others)

    yield from choices(0, max(total(bins.lengths, left) - later[spool + 1], 0), room)


def _among(pieces: Filling, sizes: frozenset[int]) -> Filling:
    return tuple(count if size in sizes else 0 for size, count in enumerate(pieces))
