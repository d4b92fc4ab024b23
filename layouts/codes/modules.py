"""The codewords of a QR symbol in, its modules out, under the mask that costs least.

A symbol is one whole number, a bit for each module, so that a rule of ISO/IEC 18004, 7.8.3, is
tried on all modules at once. The library draws the patterns, the codewords and the masks, and its
choice of a mask is kept, which counts the bits of format and version as light.
"""

from collections.abc import Sequence
from functools import lru_cache

_MASKS = range(8)
_DIGITS = bytes.maketrans(b"\x00\x01", b"01")


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
    return _drawn(codewords, version, 0, 0, test=True) ^ _empty(version, 0, 0, test=True)


@lru_cache
def _inside(side: int) -> int:
    """Return all modules. Between the rows stands one that is neither dark nor light."""
    return int(("1" * side + "0") * side, 2)


@lru_cache(maxsize=1024)
def _empty(version: int, correction: int, mask: int, *, test: bool) -> int:
    """Return the patterns, and the mask on data of zeros."""
    return _drawn((), version, correction, mask, test=test)


def _drawn(
    codewords: Sequence[int], version: int, correction: int, mask: int, *, test: bool
) -> int:
    """Return a symbol as the library makes it; for a test, bits of format and version are light."""
    from qrcode import QRCode

    code = QRCode(version, correction, border=0)
    code.data_cache = codewords
    code.makeImpl(test, mask)
    rows = b"".join(bytes((*row, False)) for row in code.modules)
    return int(rows.translate(_DIGITS), 2)
