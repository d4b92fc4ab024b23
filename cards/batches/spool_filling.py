"""Pieces for one spool: lengths, how many of each and its room in; the fullest filling out.

All lengths are in the same whole parts, and the longest stand first.
"""

from collections.abc import Iterable, Sequence

Filling = tuple[int, ...]  # how many pieces of each size

_SPARE = 8  # pieces of each size that are kept to fill the end of a long spool
_WORK = 1 << 14  # bits that are worked on in one step


def total(lengths: Sequence[int], pieces: Sequence[int]) -> int:
    """Return the length of so many pieces."""
    return sum(length * count for length, count in zip(lengths, pieces, strict=True))


def rest(pieces: Filling, fillings: Iterable[Filling]) -> Filling:
    """Return the pieces without those of some fillings."""
    return tuple(count - sum(taken) for count, *taken in zip(pieces, *fillings, strict=True))


def full(lengths: Sequence[int], pieces: Filling, room: int, bits: int) -> Filling:
    """Return a filling that has no room for one more, as full as a table of so many bits tells.

    A spool too long for the table gives the longest pieces first, and only its end is chosen.
    """
    if total(lengths, pieces) <= room:
        return pieces
    before_end = room - max(bits, 2 * _SPARE * max(lengths)) if bits else room
    spared = tuple(max(count - _SPARE, 0) for count in pieces) if bits else pieces
    fillings = [_longest_first(lengths, spared, before_end)]
    if bits:
        left, end = rest(pieces, fillings), room - total(lengths, fillings[0])
        part = max(-(-end // bits), 1)  # what a bit stands for; pieces are rounded up to it
        fillings.append(_fullest([-(-each // part) for each in lengths], left, end // part))
        end -= total(lengths, fillings[1])
        fillings.append(_longest_first(lengths, rest(pieces, fillings), end))
    return tuple(map(sum, zip(*fillings, strict=True)))


def bits_within(steps: int, pieces: Sequence[int], tables: int) -> int:
    """Return the room of so many tables that `sums` makes within some steps; 0 for none."""
    return steps // max(tables * cost(pieces, 0), 1) * _WORK


def cost(pieces: Sequence[int], room: int) -> int:
    """Return the steps that `sums` takes."""
    return sum(count.bit_length() + 2 for count in pieces) * (1 + room // _WORK)


def sums(lengths: Sequence[int], least: Sequence[int], most: Sequence[int], room: int) -> list[int]:
    """Return for each size the sums up to `room` that it and the shorter ones make, as bits."""
    mask = (1 << (room + 1)) - 1
    made = [1]
    for length, low, high in zip(reversed(lengths), reversed(least), reversed(most), strict=True):
        bits = (made[-1] << low * length) & mask
        more, step = min(high, room // length) - low, 1
        while more > 0:  # by 1, 2, 4, … pieces: together they make any number
            step = min(step, more)
            bits |= (bits << step * length) & mask
            more, step = more - step, 2 * step
        made.append(bits)
    return made[::-1]


def _longest_first(lengths: Sequence[int], pieces: Filling, room: int) -> Filling:
    filling = []
    for length, count in zip(lengths, pieces, strict=True):
        filling.append(max(min(count, room // length), 0))
        room -= filling[-1] * length
    return tuple(filling)


def _fullest(lengths: Sequence[int], pieces: Filling, room: int) -> Filling:
    """Return the fullest filling; of equals, that with most of the longest pieces."""
    whole, *tables = sums(lengths, [0] * len(pieces), pieces, room)
    need = whole.bit_length() - 1
    filling = []
    for length, count, table in zip(lengths, pieces, tables, strict=True):
        made = table.to_bytes(room // 8 + 1, "little")
        taken = min(count, need // length)
        while not made[(need - taken * length) >> 3] >> ((need - taken * length) & 7) & 1:
            taken -= 1
        filling.append(taken)
        need -= taken * length
    return tuple(filling)
