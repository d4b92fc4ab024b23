"""Codes against ISO/IEC 18004 and against a second encoder.

The capacities are those of the standard's table of data capacity (table 7 in the 2015 edition),
taken down from a copy of the table and recomputed from the codewords each version holds.
"""

from collections.abc import Sequence

import pytest
import segno
import zxingcpp
from PIL import Image

from tagend.layouts.codes.code import LEVELS, Level, symbol
from tagend.layouts.codes.codewords import ALPHANUMERIC

# Alphanumeric characters that versions 1 to 10 hold, by level.
CAPACITY: dict[Level, tuple[int, ...]] = {
    "L": (25, 47, 77, 114, 154, 195, 224, 279, 335, 395),
    "M": (20, 38, 61, 90, 122, 154, 178, 221, 262, 311),
    "Q": (16, 29, 47, 67, 87, 108, 125, 157, 189, 221),
    "H": (10, 20, 35, 50, 64, 84, 93, 122, 143, 174),
}
# Bytes that the same versions hold.
BYTES: dict[Level, tuple[int, ...]] = {
    "L": (17, 32, 53, 78, 106, 134, 154, 192, 230, 271),
    "M": (14, 26, 42, 62, 84, 106, 122, 152, 180, 213),
    "Q": (11, 20, 32, 46, 60, 74, 86, 108, 130, 151),
    "H": (7, 14, 24, 34, 44, 58, 64, 84, 98, 119),
}
# Table 5 of the standard: values 0 to 44.
CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

TEXTS = ["T1", "T1 SANDBAR 30/.023/HN 25%", "T1:" * 30, "Small letters, too; (say)"]


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize(("character", "capacity"), [("A", CAPACITY), ("a", BYTES)])
def test_each_version_holds_what_the_standard_says_and_no_more(
    level: Level, character: str, capacity: dict[Level, tuple[int, ...]]
) -> None:
    for version, limit in enumerate(capacity[level], start=1):
        full = symbol(character * limit, level)
        assert (full.version, full.level, full.side) == (version, level, 17 + 4 * version)
        assert symbol(character * (limit + 1), level).version == version + 1


def test_the_alphanumeric_characters_are_the_standards() -> None:
    assert frozenset(CHARACTERS) == frozenset(ALPHANUMERIC)
    # 38 characters fill version 2-M in this mode only; in bytes it holds 26.
    for character in CHARACTERS:
        assert symbol(character * 38).version == 2


def decoded(rows: Sequence[bytes]) -> list[str]:
    side = len(rows) + 8  # a quiet zone of 4 modules all round
    picture = Image.new("L", (side, side), 255)
    for y, row in enumerate(rows):
        for x, dark in enumerate(row):
            picture.putpixel((x + 4, y + 4), 0 if dark else 255)
    picture = picture.resize((side * 4, side * 4), Image.Resampling.NEAREST)
    return [found.text for found in zxingcpp.read_barcodes(picture)]


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("text", TEXTS)
def test_a_second_encoder_needs_the_same_size_and_reads_the_same(text: str, level: Level) -> None:
    ours = symbol(text, level)
    second = segno.make_qr(text, error=level, boost_error=True)
    assert (ours.version, ours.level) == (second.version, second.error)
    rows = tuple(map(bytes, second.matrix))
    assert decoded(ours.rows) == decoded(rows) == [text]
