"""The codewords of a QR symbol in, its modules out, under the mask that costs least.

A symbol is one whole number, a bit for each module, so that a rule of ISO/IEC 18004, 7.8.3, is
tried on all modules at once. The patterns and masks are the library's, and so is its choice, which
counts the bits of format and version as light.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from operator import itemgetter
from typing import Any

_MASKS = range(8)


def modules(codewords: Sequence[int], version: int, correction: int) -> int:
    """Return the modules as `Symbol` has them; `correction` is the library's for the level."""
    side = 17 + 4 * version
    data = _placed(codewords, version)
    inside = _inside(side)

    def penalty(mask: int) -> int:
        return _penalty(data ^ _empty(version, correction, mask, test=True), inside, side)

    return data ^ _empty(version, correction, min(_MASKS, key=penalty), test=False)


def _penalty(dark: int, inside: int, side: int) -> int:
    light = dark ^ inside
    share = abs(dark.bit_count() / side**2 * 100 - 50)
    blocks = sum(_blocks(each, side) for each in (dark, light))
    lines = sum(_runs(dark, s) + _runs(light, s) + _finders(dark, light, s) for s in (1, side + 1))
    return lines + blocks + 10 * int(share / 5)


def _runs(modules: int, step: int) -> int:
    """Return what runs cost along rows (a step of 1) or columns: each of n modules n - 2."""
    pairs = modules & modules >> step
    fives = pairs & pairs >> 2 * step & modules >> 4 * step
    return fives.bit_count() + 2 * (fives & ~(fives >> step)).bit_count()


def _blocks(modules: int, side: int) -> int:
    pairs = modules & modules >> 1
    return 3 * (pairs & pairs >> side + 1).bit_count()


def _finders(dark: int, light: int, step: int) -> int:
    """Return what 1011101 costs with four light modules before it or behind it."""
    pair, gap = dark & dark >> step, light & light >> step
    three = pair & dark >> 2 * step
    found = dark & light >> step & three >> 2 * step & light >> 5 * step & dark >> 6 * step
    four = gap & gap >> 2 * step
    return 40 * ((found & four >> 7 * step).bit_count() + (found & four << 4 * step).bit_count())


def _placed(codewords: Sequence[int], version: int) -> int:
    """Return the codewords where they stand, unmasked."""
    size = 8 * len(codewords)
    # Behind them stands the 0 that all modules have which no codeword reaches.
    return int("".join(_order(version, size)(_bits(int.from_bytes(codewords), size) + "0")), 2)


@lru_cache
def _order(version: int, size: int) -> "itemgetter[Any]":
    """Return what takes the bits of the codewords in the order of the modules."""
    side = 17 + 4 * version
    bits = dict(zip(_free(version), range(size), strict=False))
    return itemgetter(*(bits.get(place, size) for place in range(side * (side + 1))))


def _free(version: int) -> Iterator[int]:
    """Yield the places of the modules that hold data, in two columns up and down by turns."""
    side = 17 + 4 * version
    everywhere = _empty(version, 0, 0, test=True) ^ _empty(version, 0, 0, test=True, filled=True)
    holds = _bits(everywhere, side * (side + 1))
    for turn, right in enumerate(range(side - 1, 0, -2)):
        right -= right <= 6  # past the column of the timing pattern
        for row in range(side) if turn % 2 else reversed(range(side)):
            for place in (row * (side + 1) + right, row * (side + 1) + right - 1):
                if holds[place] == "1":
                    yield place


@lru_cache
def _inside(side: int) -> int:
    """Return all modules. Between the rows stands one that is neither dark nor light."""
    return int(("1" * side + "0") * side, 2)


@lru_cache(maxsize=1024)
def _empty(version: int, correction: int, mask: int, *, test: bool, filled: bool = False) -> int:
    """Return the patterns, and the mask on data of zeros; or of ones, where it is filled."""
    from qrcode import QRCode

    code = QRCode(version, correction, border=0)
    code.data_cache = [255] * 4000 if filled else []
    code.makeImpl(test, mask)
    rows = ("".join("01"[dark] for dark in row) + "0" for row in code.modules)
    return int("".join(rows), 2)


def _bits(number: int, size: int) -> str:
    return f"{number:0{size}b}"
