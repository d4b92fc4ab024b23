from random import Random

import pytest
import segno
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from tagend.layouts.codes.code import ALPHANUMERIC, LEVELS, Level, symbol
from tagend.layouts.codes.code_check import Rows, WrongSymbol, text_of

TEXT = "TAG1:A*7"  # 8 characters fit even version 1-H: ISO/IEC 18004, table 7
ASCII = st.characters(min_codepoint=32, max_codepoint=126)


def rows_of(code: segno.QRCode) -> Rows:
    return [[bool(dark) for dark in row] for row in code.matrix]


def seen(rows: Rows) -> list[str]:
    """Return what a camera's reader makes of the modules."""
    side = len(rows) + 8
    picture = Image.new("L", (side, side), 255)
    for y, row in enumerate(rows):
        for x, dark in enumerate(row):
            picture.putpixel((x + 4, y + 4), 0 if dark else 255)
    picture = picture.resize((side * 4, side * 4), Image.Resampling.NEAREST)
    return [code.text for code in zxingcpp.read_barcodes(picture)]


@pytest.mark.parametrize("version", range(1, 41))
def test_symbols_of_another_encoder_are_read_in_every_version_and_level(version: int) -> None:
    for level in LEVELS:
        code = segno.make_qr(
            TEXT, version=version, error=level, boost_error=False, mask=version % 8
        )
        assert text_of(rows_of(code)) == TEXT


@pytest.mark.parametrize("mask", range(8))
@pytest.mark.parametrize("version", [2, 7])
def test_every_mask_is_undone(mask: int, version: int) -> None:
    assert text_of(rows_of(segno.make_qr(TEXT, version=version, mask=mask))) == TEXT


@pytest.mark.parametrize("count", [1, 2, 61, 62, 300, 1500, 4296])
def test_full_and_long_symbols_are_read(count: int) -> None:
    # 4,296 characters fill version 40-L (ISO/IEC 18004, table 7)
    text = ("TAG1:30*.023" * 400)[:count]
    assert text_of(symbol(text, "L").rows) == text


@given(st.text(sorted(ALPHANUMERIC), min_size=1, max_size=200), st.sampled_from(LEVELS))
def test_what_is_written_is_read(text: str, level: Level) -> None:
    assert text_of(symbol(text, level).rows) == text


@given(st.text(ASCII, min_size=1, max_size=60))
def test_it_agrees_with_a_cameras_reader(text: str) -> None:
    rows = symbol(text).rows
    assert [text_of(rows)] == seen(rows) == [text]


@pytest.mark.parametrize("version", [1, 7])
def test_each_wrong_module_is_an_error(version: int) -> None:
    right = [list(row) for row in rows_of(segno.make_qr(TEXT, version=version, error="H"))]
    for i in range(len(right)):
        for j in range(len(right)):
            right[i][j] = not right[i][j]
            with pytest.raises(WrongSymbol):
                text_of(right)
            right[i][j] = not right[i][j]
    assert text_of(right) == TEXT


def test_a_cameras_reader_forgives_what_is_an_error_here() -> None:
    rows = [list(row) for row in symbol(TEXT).rows]
    rows[10][10] = not rows[10][10]
    assert seen(rows) == [TEXT]
    with pytest.raises(WrongSymbol, match="a codeword is wrong"):
        text_of(rows)


def test_other_modes_are_refused() -> None:
    with pytest.raises(WrongSymbol, match="mode 0001"):
        text_of(rows_of(segno.make_qr("12345678")))


@pytest.mark.parametrize("side", [0, 1, 20, 22, 181])
def test_other_sizes_are_refused(side: int) -> None:
    with pytest.raises(WrongSymbol, match="not the size"):
        text_of([[False] * side] * side)


def test_ragged_rows_are_refused() -> None:
    with pytest.raises(WrongSymbol, match="not the size"):
        text_of([[False] * 21] * 20 + [[False] * 20])


def test_noise_is_refused() -> None:
    random = Random(1)
    for _ in range(200):
        with pytest.raises(WrongSymbol):
            text_of([[random.random() < 0.5 for _ in range(21)] for _ in range(21)])
