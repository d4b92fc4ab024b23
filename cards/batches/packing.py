"""Whether pieces fit on spools: how many of each size in; what each spool gives, or None, out."""

from collections.abc import Iterator, Sequence
from itertools import accumulate
from typing import NamedTuple

Filling = tuple[int, ...]  # how many pieces of each size


class Bins(NamedTuple):
    """What pieces are packed into; all lengths are in the same whole parts."""

    lengths: tuple[int, ...]  # of each size, the longest first
    rooms: tuple[int, ...]  # of each spool
    fits: tuple[frozenset[int], ...]  # the sizes that each spool may give


def packed(bins: Bins, wanted: Filling) -> list[Filling] | None:
    """Return a filling for each spool that makes up the pieces wanted, or None where none does.

    The fillings of one spool after the other are tried, without those that leave more than the
    later spools can take, and without what has failed before.
    """
    later = _later(bins, wanted)
    if not bins.rooms:
        return None if any(wanted) else []
    chosen: list[Filling] = []
    left = [wanted]  # before each spool that is being filled
    trying = [_fillings(bins, 0, wanted, later)]
    failed: set[tuple[int, Filling]] = set()
    while trying:
        filling = next(trying[-1], None)
        if filling is None:
            trying.pop()
            failed.add((len(trying), left.pop()))
            del chosen[-1:]
            continue
        rest = tuple(have - taken for have, taken in zip(left[-1], filling, strict=True))
        if len(trying) == len(bins.rooms):
            return [*chosen, filling]
        if (len(trying), rest) not in failed:
            chosen.append(filling)
            left.append(rest)
            trying.append(_fillings(bins, len(trying), rest, later))
    return None


def least_left_over(bins: Bins, wanted: Filling) -> int:
    """Return the length of the pieces that the spools cannot give, if they give all they can."""
    short = max(total(bins, wanted) - _later(bins, wanted)[0], 0)
    low, high = short, total(bins, wanted)
    while low < high:
        middle = (low + high) // 2
        if packed(with_one_more(bins, middle), wanted) is None:
            low = middle + 1
        else:
            high = middle
    return high


def with_one_more(bins: Bins, room: int) -> Bins:
    """Return the spools with one more that may give every size, last."""
    every = frozenset(range(len(bins.lengths)))
    return bins._replace(rooms=(*bins.rooms, room), fits=(*bins.fits, every))


def total(bins: Bins, pieces: Filling) -> int:
    """Return the length of so many pieces."""
    return sum(length * count for length, count in zip(bins.lengths, pieces, strict=True))


def _later(bins: Bins, wanted: Filling) -> list[int]:
    """Return what each spool and those after it can take at the most, and 0 at the end.

    No spool takes more than the longest sum of pieces wanted that fits on it.
    """
    most = [
        _sums(bins.lengths, [0] * len(wanted), _allowed(wanted, fits), room)[0].bit_length() - 1
        for room, fits in zip(bins.rooms, bins.fits, strict=True)
    ]
    return [*reversed(list(accumulate(reversed(most), initial=0)))]


def _allowed(pieces: Filling, fits: frozenset[int]) -> list[int]:
    return [count if size in fits else 0 for size, count in enumerate(pieces)]


def _fillings(bins: Bins, spool: int, left: Filling, later: Sequence[int]) -> Iterator[Filling]:
    """Yield the fillings of a spool that leave no more than the later ones can take."""
    fits_later = frozenset[int]().union(*bins.fits[spool + 1 :])
    least = [0 if size in fits_later else count for size, count in enumerate(left)]
    most = _allowed(left, bins.fits[spool])
    if any(low > high for low, high in zip(least, most, strict=True)):
        return
    need, room = max(total(bins, left) - later[spool + 1], 0), bins.rooms[spool]
    sums = _sums(bins.lengths, least, most, room)

    def choices(size: int, need: int, room: int) -> Iterator[Filling]:
        if size == len(left):
            yield ()
            return
        length = bins.lengths[size]
        for count in range(min(most[size], room // length), least[size] - 1, -1):
            taken = count * length
            if _any_from(sums[size + 1], need - taken, room - taken):
                for rest in choices(size + 1, need - taken, room - taken):
                    yield (count, *rest)

    yield from choices(0, need, room)


def _sums(
    lengths: Sequence[int], least: Sequence[int], most: Sequence[int], room: int
) -> list[int]:
    """Return for each size the sums up to `room` that it and the shorter ones make, as bits."""
    mask = (1 << (room + 1)) - 1
    sums = [1]
    for length, low, high in zip(reversed(lengths), reversed(least), reversed(most), strict=True):
        bits = (sums[-1] << low * length) & mask
        more, step = min(high, room // length) - low, 1
        while more > 0:  # by 1, 2, 4, … pieces: together they make any number
            step = min(step, more)
            bits |= (bits << step * length) & mask
            more, step = more - step, 2 * step
        sums.append(bits)
    return sums[::-1]


def _any_from(sums: int, low: int, high: int) -> bool:
    low = max(low, 0)
    return high >= low and (sums >> low) & ((1 << (high - low + 1)) - 1) != 0
