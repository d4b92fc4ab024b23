"""ISO/IEC 18004: of which codeword each module of a symbol is, and of which block a codeword."""

from collections.abc import Iterator
from functools import cache
from itertools import product

import numpy as np
from numpy.typing import NDArray
from qrcode import constants
from qrcode.base import rs_blocks
from qrcode.util import pattern_position

from tagend.layouts.paper.face import Symbol

Rows = NDArray[np.bool_]


@cache
def function_modules(version: int) -> Rows:
    """Return where finders, timing, alignment, format and version stand."""
    side = 4 * version + 17
    found = np.zeros((side, side), bool)
    found[:9, :9] = found[:9, -8:] = found[-8:, :9] = True
    found[6, :] = found[:, 6] = True
    for y, x in product(pattern_position(version), repeat=2):
        if (y, x) not in {(6, 6), (6, side - 7), (side - 7, 6)}:
            found[y - 2 : y + 3, x - 2 : x + 3] = True
    if version >= 7:
        found[:6, -11:-8] = found[-11:-8, :6] = True
    return found


@cache
def codewords(version: int) -> NDArray[np.int_]:
    """Return the place of each module's codeword in the stream, -1 where it is of none."""
    fixed = function_modules(version)
    side = len(fixed)
    found = np.full((side, side), -1)
    for bit, (y, x) in enumerate(_stream(fixed)):
        found[y, x] = bit // 8
    found[found >= (found >= 0).sum() // 8] = -1  # bits that remain
    return found


def _stream(fixed: Rows) -> Iterator[tuple[int, int]]:
    """Yield the modules of the bits: up and down in columns of two, from the right."""
    side = len(fixed)
    rights = [*range(side - 1, 6, -2), *range(5, 0, -2)]
    for turn, right in enumerate(rights):
        rows = range(side) if turn % 2 else range(side - 1, -1, -1)
        yield from ((y, x) for y in rows for x in (right, right - 1) if not fixed[y, x])


def blocks(symbol: Symbol) -> list[int]:
    """Return the block of each codeword in the stream."""
    kinds = rs_blocks(symbol.version, getattr(constants, f"ERROR_CORRECT_{symbol.level}"))
    data = [kind.data_count for kind in kinds]
    rest = [kind.total_count - kind.data_count for kind in kinds]
    return [
        block
        for counts in (data, rest)
        for place in range(max(counts))
        for block, count in enumerate(counts)
        if place < count
    ]


def corrected_at_most(symbol: Symbol) -> list[int]:
    """Return how many codewords of each block the correction makes up for."""
    kinds = rs_blocks(symbol.version, getattr(constants, f"ERROR_CORRECT_{symbol.level}"))
    return [(kind.total_count - kind.data_count) // 2 for kind in kinds]
