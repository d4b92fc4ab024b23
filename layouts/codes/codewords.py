"""A text in ASCII in, the version of its symbol out; with that, the codewords in the symbol."""

from bisect import bisect_left

ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"  # ISO/IEC 18004, table 5
_KNOWN = frozenset(ALPHANUMERIC)
_COUNTED = ((1, 9), (10, 26), (27, 40))  # versions that count the characters in as many bits


def smallest(text: str, correction: int) -> int | None:
    """Return the smallest version that holds the text; None where not even the largest does.

    The library looks for it by writing the text anew in each version.
    """
    from qrcode.util import BIT_LIMIT_TABLE, length_in_bits

    # Of alphanumeric mode two characters take 11 bits: ISO/IEC 18004, 7.4.
    size = (11 * len(text) + 1) // 2 if _KNOWN.issuperset(text) else 8 * len(text)
    for first, last in _COUNTED:
        needed = 4 + length_in_bits(_mode(text), first) + size
        version = bisect_left(BIT_LIMIT_TABLE[correction], needed, first, last + 1)
        if version <= last:
            return version
    return None


def codewords(text: str, version: int, correction: int) -> bytes:
    """Return all codewords in the order in which they are placed."""
    from qrcode.util import QRData, create_data

    return bytes(create_data(version, correction, [QRData(text.encode(), mode=_mode(text))]))


def _mode(text: str) -> int:
    from qrcode.util import MODE_8BIT_BYTE, MODE_ALPHA_NUM

    return int(MODE_ALPHA_NUM if _KNOWN.issuperset(text) else MODE_8BIT_BYTE)
