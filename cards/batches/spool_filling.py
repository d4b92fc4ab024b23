"""Pieces for one spool: lengths, how many of each and its room in; fillings of it out.

All lengths are in the same whole parts, and the longest stand first.
"""

from collections.abc import Iterable, Iterator, Sequence

from tagend.cards.batches.budget import Budget

Filling = tuple[int, ...]  # how many pieces of each size

_WORK = 1 << 14  # bits that are worked on in one step


def total(lengths: Sequence[int], pieces: Sequence[int]) -> int:
    """Return the length of so many pieces."""
    return sum(length * count for length, count in zip(lengths, pieces, strict=True))


def rest(pieces: Filling, fillings: Iterable[Filling]) -> Filling:
    """Return the pieces without those of some fillings."""
    return tuple(count - sum(taken) for count, *taken in zip(pieces, *fillings, strict=True))


def longest_first(lengths: Sequence[int], pieces: Filling, room: int) -> Filling:
    """Return a filling that has no room for one more piece."""
    filling = []
    for length, count in zip(lengths, pieces, strict=True):
        filling.append(min(count, room // length))
        room -= filling[-1] * length
    return tuple(filling)


def fillings(
    lengths: Sequence[int], pieces: Filling, need: int, room: int, budget: Budget
) -> Iterator[Filling]:
    """Yield the fillings that take no less than a length, those with most of the longest first.

    Raises `Spent` where the budget does not suffice.
    """
    made = sums(lengths, pieces, room, budget)

    def choices(size: int, need: int, room: int) -> Iterator[Filling]:
        if size == len(lengths):
            yield ()
            return
        length = lengths[size]
        for count in range(min(pieces[size], room // length), -1, -1):
            over, lack = room - count * length, max(need - count * length, 0)
            budget.spend(1 + over // _WORK)
            if over >= lack and (made[size + 1] >> lack) & ((1 << (over - lack + 1)) - 1):
                for others in choices(size + 1, lack, over):
                    yield (count, *others)

    yield from choices(0, need, room)


def sums(lengths: Sequence[int], pieces: Filling, room: int, budget: Budget) -> list[int]:
    """Return for each size the sums up to `room` that it and the shorter ones make, as bits."""
    budget.spend(cost(pieces, room))
    mask = (1 << (room + 1)) - 1
    made = [1]
    for length, count in zip(reversed(lengths), reversed(pieces), strict=True):
        bits, step = made[-1], 1
        more = min(count, room // length)
        while more > 0:  # by 1, 2, 4, … pieces: together they make any number
            step = min(step, more)
            bits |= (bits << step * length) & mask
            more, step = more - step, 2 * step
        made.append(bits)
    return made[::-1]


def cost(pieces: Sequence[int], room: int) -> int:
    """Return the steps that `sums` takes."""
    return sum(count.bit_length() + 2 for count in pieces) * (1 + room // _WORK)


def room_within(steps: int, pieces: Sequence[int]) -> int:
    """Return the room up to which `sums` takes no more than so many steps."""
    return steps // max(cost(pieces, 0), 1) * _WORK
