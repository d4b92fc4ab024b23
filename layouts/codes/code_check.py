"""The modules of a QR symbol in, its text out: a way back that shares nothing with the encoder.

Strict where a camera's reader forgives: one wrong module is an error. Clauses and tables are those
of ISO/IEC 18004:2015.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from io import StringIO

from tagend.layouts.codes.code_places import (
    codeword_places,
    format_places,
    patterns,
    version_places,
)

Rows = Sequence[Sequence[bool]]  # a row of modules after the other; dark is true

# Table 9, by level and version: the codewords for correction in a block, and the blocks.
_CORRECTION = {
    "L": """7 10 15 20 26 18 20 24 30 18 20 24 26 30 22 24 28 30 28 28 28 28 30 30 26 28 30 30 30 30
        30 30 30 30 30 30 30 30 30 30""",
    "M": """10 16 26 18 24 16 18 22 22 26 30 22 22 24 24 28 28 26 26 26 26 28 28 28 28 28 28 28 28
        28 28 28 28 28 28 28 28 28 28 28""",
    "Q": """13 22 18 26 18 24 18 22 20 24 28 26 24 20 30 24 28 28 26 30 28 30 30 30 30 28 30 30 30
        30 30 30 30 30 30 30 30 30 30 30""",
    "H": """17 28 22 16 22 28 26 26 24 28 24 28 22 24 24 30 28 28 26 28 30 24 30 30 30 30 30 30 30
        30 30 30 30 30 30 30 30 30 30 30""",
}
_BLOCKS = {
    "L": """1 1 1 1 1 2 2 2 2 4 4 4 4 4 6 6 6 6 7 8 8 9 9 10 12 12 12 13 14 15 16 17 18 19 19 20 21
        22 24 25""",
    "M": """1 1 1 2 2 4 4 4 5 5 5 8 9 9 10 10 11 13 14 16 17 17 18 20 21 23 25 26 28 29 31 33 35 37
        38 40 43 45 47 49""",
    "Q": """1 1 2 2 4 4 6 6 8 8 8 10 12 16 12 17 16 18 21 20 23 23 25 27 29 34 34 35 38 40 43 45 48
        51 53 56 59 62 65 68""",
    "H": """1 1 2 4 4 4 5 6 8 8 11 11 16 16 18 16 19 21 25 25 25 34 30 32 35 37 40 42 45 48 51 54 57
        60 63 66 70 74 77 81""",
}
_LEVELS = ("M", "L", "H", "Q")  # table 12, by their two bits
_ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"  # table 5
# Table 10; i is the row and j the column.
_MASKS: tuple[Callable[[int, int], bool], ...] = (
    lambda i, j: (i + j) % 2 == 0,
    lambda i, j: i % 2 == 0,
    lambda i, j: j % 3 == 0,
    lambda i, j: (i + j) % 3 == 0,
    lambda i, j: (i // 2 + j // 3) % 2 == 0,
    lambda i, j: i * j % 2 + i * j % 3 == 0,
    lambda i, j: (i * j % 2 + i * j % 3) % 2 == 0,
    lambda i, j: ((i + j) % 2 + i * j % 3) % 2 == 0,
)


class WrongSymbol(ValueError):
    """Modules that are no flawless symbol."""


def text_of(rows: Rows) -> str:
    """Return the text of a symbol without its quiet zone.

    Raises `WrongSymbol` for any module that is not as it should be, and for modes other than
    alphanumeric and byte.
    """
    side = len(rows)
    version, rest = divmod(side - 17, 4)
    if rest or not 1 <= version <= 40 or any(len(row) != side for row in rows):
        raise WrongSymbol("this is not the size of a symbol")
    for (i, j), dark in patterns(version).items():
        if rows[i][j] != dark:
            raise WrongSymbol(f"the pattern at row {i}, column {j} is broken")
    level, mask = _format(rows, version)
    _check_version(rows, version)
    return _decoded(_data(_codewords(rows, version, _MASKS[mask]), version, level), version)


def _format(rows: Rows, version: int) -> tuple[str, int]:
    """Return level and mask; 7.9."""
    one, two = zip(*format_places(version), strict=True)
    bits = _number(rows[i][j] for i, j in one)
    if bits != _number(rows[i][j] for i, j in two):
        raise WrongSymbol("the two copies of the format differ")
    data = (bits ^ 0b101010000010010) >> 10
    if bits != _with_remainder(data, 10, 0b10100110111) ^ 0b101010000010010:
        raise WrongSymbol("the format is broken")
    return _LEVELS[data >> 3], data & 7


def _check_version(rows: Rows, version: int) -> None:
    """Raise `WrongSymbol` where the version written in the symbol is not its own; 7.10."""
    meant = _with_remainder(version, 12, 0b1111100100101)
    for places in version_places(version):
        if _number(rows[i][j] for i, j in places) != meant:
            raise WrongSymbol("the version is broken")


def _with_remainder(data: int, count: int, generator: int) -> int:
    """Return data and the bits of its Bose-Chaudhuri-Hocquenghem code; annexes C and D."""
    rest = data << count
    while rest.bit_length() > count:
        rest ^= generator << (rest.bit_length() - count - 1)
    return data << count | rest


def _codewords(rows: Rows, version: int, mask: Callable[[int, int], bool]) -> bytes:
    bits = [rows[i][j] != mask(i, j) for i, j in codeword_places(version)]
    count = len(bits) // 8
    if any(bits[8 * count :]):  # up to 7 bits are left over
        raise WrongSymbol("a module that says nothing is dark")
    return _number(bits[: 8 * count]).to_bytes(count, "big")


def _data(codewords: bytes, version: int, level: str) -> bytes:
    """Return the data codewords in their order; 7.6."""
    blocks = int(_BLOCKS[level].split()[version - 1])
    correction = int(_CORRECTION[level].split()[version - 1])
    short, longer = divmod(len(codewords), blocks)
    even = (short - correction) * blocks
    checks = codewords[-blocks * correction :]
    joined = b""
    for number in range(blocks):
        # The last blocks have a codeword more, which stands after all others.
        more = even + number - (blocks - longer)
        data = codewords[number:even:blocks]
        data += codewords[more : more + 1] if more >= even else b""
        _check_block(data + checks[number::blocks], correction)
        joined += data
    return joined


def _check_block(block: bytes, correction: int) -> None:
    """Raise `WrongSymbol` unless the generator of 7.5.2 divides the block: all syndromes are 0."""
    powers, logs = _field()
    for root in range(correction):
        value = 0
        for codeword in block:
            value = codeword ^ (powers[logs[value] + root] if value else 0)
        if value:
            raise WrongSymbol("a codeword is wrong")


@lru_cache(maxsize=1)
def _field() -> tuple[tuple[int, ...], dict[int, int]]:
    """Return the powers of 2 in GF(256) over x^8 + x^4 + x^3 + x^2 + 1, and their logarithms."""
    powers = [1]
    while len(powers) < 255:
        doubled = powers[-1] << 1
        powers.append(doubled ^ 0b100011101 if doubled > 255 else doubled)
    return (*powers, *powers), {value: place for place, value in enumerate(powers)}


def _decoded(data: bytes, version: int) -> str:
    """Return the text of the segments up to the terminator; 7.4."""
    bits, left = StringIO("".join(f"{codeword:08b}" for codeword in data)), 8 * len(data)
    sizes = 0 if version <= 9 else 1 if version <= 26 else 2
    text = ""
    while left - bits.tell() >= 4 and (mode := _take(bits, 4)):
        if mode == 0b0010:
            pairs, last = divmod(_take(bits, (9, 11, 13)[sizes]), 2)
            for _ in range(pairs):
                one, other = divmod(_take(bits, 11), 45)
                text += _character(one) + _character(other)
            text += _character(_take(bits, 6)) if last else ""
        elif mode == 0b0100:
            count = _take(bits, (8, 16, 16)[sizes])
            text += bytes(_take(bits, 8) for _ in range(count)).decode("latin-1")
        else:
            raise WrongSymbol(f"mode {mode:04b} is none that is written here")
    return text


def _take(bits: StringIO, count: int) -> int:
    taken = bits.read(count)
    if len(taken) < count:
        raise WrongSymbol("the text has no end")
    return int(taken, 2)


def _character(value: int) -> str:
    if value >= len(_ALPHANUMERIC):
        raise WrongSymbol("there is no such character")
    return _ALPHANUMERIC[value]


def _number(bits: Iterable[bool]) -> int:
    """Return the number that bits write, the highest first."""
    return int("".join("01"[bit] for bit in bits), 2)
