"""A text in ASCII in, the codewords of its symbol out: ISO/IEC 18004, 7.4 to 7.6.

The tables are the library's. Its own way divides polynomials number by number; here the rest of a
division is one whole number.
"""

from bisect import bisect_left
from collections.abc import Iterator
from functools import lru_cache
from itertools import zip_longest

ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"  # in the order of their values
_KNOWN = frozenset(ALPHANUMERIC)
_PAD = b"\xec\x11"
_COUNTED = ((1, 9), (10, 26), (27, 40))  # versions that count the characters in as many bits


def smallest(text: str, correction: int) -> int | None:
    """Return the smallest version that holds the text; None where not even the largest does."""
    from qrcode.util import BIT_LIMIT_TABLE

    size = len(_written(text))
    for first, last in _COUNTED:
        needed = 4 + _count_size(text, first) + size
        version = bisect_left(BIT_LIMIT_TABLE[correction], needed, first, last + 1)
        if version <= last:
            return version
    return None


def codewords(text: str, version: int, correction: int) -> bytes:
    """Return all codewords in the order in which they are placed."""
    from qrcode.base import rs_blocks

    blocks = rs_blocks(version, correction)
    data = _data(text, version, sum(block.data_count for block in blocks))
    parts: list[bytes] = []
    for block in blocks:
        parts.append(data[: block.data_count])
        data = data[block.data_count :]
    checks = [_rest(part, blocks[0].total_count - blocks[0].data_count) for part in parts]
    return bytes((*_by_turns(parts), *_by_turns(checks)))


def _by_turns(parts: list[bytes]) -> Iterator[int]:
    return (each for turn in zip_longest(*parts) for each in turn if each is not None)


def _data(text: str, version: int, size: int) -> bytes:
    """Return mode, count and text, and what fills the symbol up."""
    mode = "0010" if _KNOWN.issuperset(text) else "0100"
    bits = f"{mode}{len(text):0{_count_size(text, version)}b}{_written(text)}"
    bits += "0" * min(4, 8 * size - len(bits))
    bits += "0" * (-len(bits) % 8)
    data = int(bits, 2).to_bytes(len(bits) // 8)
    return data + (_PAD * size)[: size - len(data)]


def _count_size(text: str, version: int) -> int:
    from qrcode.util import MODE_8BIT_BYTE, MODE_ALPHA_NUM, length_in_bits

    mode = MODE_ALPHA_NUM if _KNOWN.issuperset(text) else MODE_8BIT_BYTE
    return int(length_in_bits(mode, version))


@lru_cache(maxsize=64)  # asked for once for each level
def _written(text: str) -> str:
    """Return the bits of the text itself: of alphanumeric mode 11 for two characters."""
    if not _KNOWN.issuperset(text):
        return "".join(f"{byte:08b}" for byte in text.encode())
    values = [ALPHANUMERIC.index(character) for character in text]
    pairs = zip(values[::2], values[1::2], strict=False)
    last = f"{values[-1]:06b}" if len(values) % 2 else ""
    return "".join(f"{45 * one + other:011b}" for one, other in pairs) + last


def _rest(data: bytes, size: int) -> bytes:
    """Return the rest of the division by the generator of so many codewords."""
    rest, times, top = 0, _times(size), 8 * (size - 1)
    for byte in data:
        lead = byte ^ rest >> top
        rest = (rest & (1 << top) - 1) << 8 ^ times[lead]
    return rest.to_bytes(size)


@lru_cache
def _times(size: int) -> tuple[int, ...]:
    """Return what each byte makes of the generator, below its first term."""
    from qrcode.base import Polynomial, gexp, glog

    generator = Polynomial([1], 0)
    for power in range(size):
        generator *= Polynomial([1, gexp(power)], 0)
    logs = [glog(each) for each in list(generator)[1:]]
    times = [0]
    for bit in range(8):  # what two bytes make differs as they do
        one = int.from_bytes(bytes(gexp(bit + log) for log in logs))
        times += [one ^ other for other in times]
    return tuple(times)
