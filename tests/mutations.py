"""A valid file in, broken ones out, the same ones each time."""

import random
from collections.abc import Iterator, Sequence

SEED = 20_260_101

_TOKENS = (  # what parsers have stumbled over
    *(b"\0", b"\xff", b"\xef\xbb\xbf", b"\xff\xfe", b"\r", b"\n\n", b"\t", b"'''", b'"""', b"\\"),
    *(b"9" * 400, b"-1", b"0", b"1e999", b"nan", b"1/0", b"0x", b"1_000", b"[" * 60, b"{" * 60),
    *(b"true", b"1979-05-27T07:32:00Z", "½".encode(), "\u202e".encode(), "\U0001f41f".encode()),
    *("″".encode(), "é".encode(), "e\u0301".encode(), b"\xed\xa0\x80", b" " * 99, b"=", b";", b","),
)


def mutations(valid: Sequence[bytes]) -> Iterator[bytes]:
    """Yield files made of the valid ones without end."""
    chance = random.Random(SEED)
    while True:
        data = bytearray(chance.choice(valid))
        for _ in range(chance.choice((1, 1, 2, 5, 20))):
            _mutate(data, chance)
        yield bytes(data)


def _mutate(data: bytearray, chance: random.Random) -> None:
    """Change one place: a bit, a byte, a piece left out, twice, elsewhere, or strange."""
    start = chance.randrange(len(data) + 1)
    end = min(len(data), start + chance.choice((1, 2, 8, 64, 4096)))
    match chance.randrange(6):
        case 0 if start < len(data):
            data[start] ^= 1 << chance.randrange(8)
        case 1 if start < len(data):
            data[start] = chance.randrange(256)
        case 2:
            del data[start:end]
        case 3:
            data[start:start] = data[start:end] * chance.choice((1, 3, 50))
        case 4:
            there = chance.randrange(len(data) + 1)
            data[there:there] = data[start:end]
        case _:
            data[start:end] = chance.choice(_TOKENS)
