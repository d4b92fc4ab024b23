"""A QR version in, the places of its symbol's modules out: patterns, format, version and codewords.

Places are row and column from the top left, as in ISO/IEC 18004:2015, whose clauses are named.
"""

from collections.abc import Iterator
from functools import lru_cache
from itertools import product

Place = tuple[int, int]


@lru_cache(maxsize=8)
def patterns(version: int) -> dict[Place, bool]:
    """Return whether each module is dark that is alike in all symbols of a version; 6.3."""
    side = 17 + 4 * version
    found = {(6, j): j % 2 == 0 for j in range(side)}
    found |= {(i, 6): i % 2 == 0 for i in range(side)}
    for row, column in ((3, 3), (3, side - 4), (side - 4, 3)):
        for i, j in product(range(-4, 5), repeat=2):
            if 0 <= row + i < side and 0 <= column + j < side:
                found[row + i, column + j] = max(abs(i), abs(j)) in (0, 1, 3)
    for row, column in _alignment(version):
        for i, j in product(range(-2, 3), repeat=2):
            found[row + i, column + j] = max(abs(i), abs(j)) != 1
    found[side - 8, 8] = True
    return found


def _alignment(version: int) -> Iterator[Place]:
    """Yield the centres of the alignment patterns: annex E, whose table this rule gives."""
    if version == 1:
        return
    count = version // 7 + 2
    step = (version * 8 + count * 3 + 5) // (count * 4 - 4) * 2
    last = 4 * version + 10
    places = [6, *range(last - (count - 2) * step, last + 1, step)]
    corners = {(6, 6), (6, last), (last, 6)}  # where the finder patterns are
    yield from (place for place in product(places, repeat=2) if place not in corners)


def format_places(version: int) -> Iterator[tuple[Place, Place]]:
    """Yield where each bit of the format stands, from the highest, and where again; 7.9."""
    side = 17 + 4 * version
    for bit in range(15):
        along = bit + (bit >= 6)  # the timing pattern stands between
        below = 14 - bit + (bit <= 8)
        first = (8, along) if bit <= 7 else (below, 8)
        yield first, ((side - 1 - bit, 8) if bit <= 6 else (8, side - 15 + bit))


def version_places(version: int) -> tuple[tuple[Place, ...], ...]:
    """Return where the bits of the version stand, from the highest, and where again; 7.10."""
    if version < 7:
        return ()
    beyond = 6 + 4 * version
    one = tuple((beyond + b, a) for a, b in product(range(5, -1, -1), range(2, -1, -1)))
    return one, tuple((j, i) for i, j in one)


@lru_cache(maxsize=8)
def codeword_places(version: int) -> tuple[Place, ...]:
    """Return where the bits of the codewords stand: 7.7.3, up and down in columns of two."""
    side = 17 + 4 * version
    taken = {*patterns(version)}.union(*format_places(version), *version_places(version))
    columns = [j for j in range(side - 1, -1, -1) if j != 6]
    found: list[Place] = []
    for number, right in enumerate(columns[::2]):
        down = range(side) if number % 2 else range(side - 1, -1, -1)
        found += [(i, j) for i in down for j in (right, right - 1)]
    return tuple(place for place in found if place not in taken)
