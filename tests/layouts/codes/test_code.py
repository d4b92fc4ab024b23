"""A text becomes the smallest symbol that holds it, in modules that a printer makes alike."""

import pytest
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from qrcode import QRCode, constants
from qrcode.util import MODE_8BIT_BYTE, MODE_ALPHA_NUM, QRData

from tagend.layouts.codes.code import (
    DESIGN_MODULE,
    LEVELS,
    QUIET,
    SMALLEST_MODULE,
    Level,
    TextTooLong,
    best_module,
    rectangles,
    smallest_version,
    symbol,
    symbol_path,
)
from tagend.layouts.codes.codewords import ALPHANUMERIC
from tagend.layouts.paper.face import MM, Symbol
from tagend.layouts.paper.lengths import fits

PLAIN = st.characters(min_codepoint=32, max_codepoint=126)


def decoded(made: Symbol) -> list[str]:
    """Return what a reader unrelated to the encoder finds in the modules."""
    picture = Image.new("L", (made.side + 2 * QUIET,) * 2, 255)
    for y, row in enumerate(made.rows):
        for x, dark in enumerate(row):
            picture.putpixel((x + QUIET, y + QUIET), 0 if dark else 255)
    picture = picture.resize((picture.width * 4,) * 2, Image.Resampling.NEAREST)
    return [found.text for found in zxingcpp.read_barcodes(picture)]


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize(
    "text", ["7", "T1 SANDBAR 30/.023/HN 25%", "Sandbar, eight; ~{x}", "T1:" * 50]
)
def test_an_unrelated_reader_reads_the_symbol(text: str, level: Level) -> None:
    assert decoded(symbol(text, level)) == [text]


@given(st.text(PLAIN, min_size=1, max_size=60))
def test_any_plain_text_comes_back(text: str) -> None:
    assert decoded(symbol(text)) == [text]


@given(st.text(ALPHANUMERIC, min_size=1, max_size=300), st.sampled_from(LEVELS))
def test_the_symbol_is_of_the_version_worked_out(text: str, level: Level) -> None:
    made = symbol(text, level)
    assert made.version == smallest_version(text, level)
    assert made.side == 17 + 4 * made.version  # ISO/IEC 18004
    assert {len(row) for row in made.rows} == {made.side}


@given(
    st.text(ALPHANUMERIC, min_size=1, max_size=400) | st.text(PLAIN, min_size=1, max_size=100),
    st.sampled_from(LEVELS),
)
def test_every_module_is_as_the_library_makes_it_mask_and_all(text: str, level: Level) -> None:
    made = symbol(text, level)
    theirs = QRCode(None, getattr(constants, f"ERROR_CORRECT_{made.level}"), border=0)
    mode = MODE_ALPHA_NUM if set(text) <= set(ALPHANUMERIC) else MODE_8BIT_BYTE
    theirs.add_data(QRData(text, mode=mode))
    theirs.make()
    assert [list(row) for row in made.rows] == theirs.modules


def test_alphanumeric_text_takes_less_room_than_the_same_in_small_letters() -> None:
    # version 3-M: 61 alphanumeric characters or 42 bytes (ISO/IEC 18004)
    assert symbol("A" * 61).version == 3
    assert symbol("a" * 61).version == 4


def test_a_long_prefix_is_not_split_into_modes_that_cost_a_version() -> None:
    text = "0123456789012345678901234567890" + "A" * 30
    assert symbol(text).version == 3  # 61 characters of one mode, as above


def test_a_higher_level_comes_free_when_it_fits_the_same_version() -> None:
    # version 2 holds 26 bytes at M, 20 at Q, 14 at H (ISO/IEC 18004)
    assert [(symbol("x" * n).version, symbol("x" * n).level) for n in (26, 20, 15)] == [
        (2, "M"),
        (2, "Q"),
        (2, "Q"),
    ]
    assert symbol("x" * 14).version == 1  # 14 bytes are the most of 1-M


def test_the_level_asked_for_is_never_lowered() -> None:
    for level in LEVELS:
        assert LEVELS.index(symbol("SANDBAR" * 7, level).level) >= LEVELS.index(level)


@pytest.mark.parametrize("text", ["", "Łódź", "7½"])
def test_text_that_readers_disagree_about_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="needs ASCII text"):
        symbol(text)


def test_text_for_no_symbol_is_refused_with_its_length() -> None:
    # version 40-L holds 4296 alphanumeric characters (ISO/IEC 18004)
    assert smallest_version("A" * 4296, "L") == 40
    with pytest.raises(TextTooLong, match=r"^a code at level L cannot hold 4297 characters$"):
        symbol("A" * 4297, "L")


def test_the_same_text_is_encoded_once() -> None:
    assert symbol("T1 SANDBAR") is symbol("T1 SANDBAR")


@given(st.text(ALPHANUMERIC, min_size=1, max_size=150))
def test_rectangles_cover_each_dark_module_once_and_no_light_one(text: str) -> None:
    made = symbol(text)
    covered = [
        (x, y)
        for left, top, width, height in symbol_path(made)
        for x in range(left, left + width)
        for y in range(top, top + height)
    ]
    dark = {(x, y) for y, row in enumerate(made.rows) for x, is_dark in enumerate(row) if is_dark}
    assert len(covered) == len(dark)
    assert set(covered) == dark


def test_rectangles_merge_along_rows_and_columns() -> None:
    assert [*rectangles((b"\1\1\0", b"\1\1\1"))] == [(0, 0, 2, 1), (0, 1, 3, 1)]
    assert [*rectangles((b"\0\1", b"\0\1", b"\1\1"))] == [(1, 0, 1, 2), (0, 2, 2, 1)]


def test_merging_leaves_far_fewer_rectangles_than_modules() -> None:
    made = symbol("T1 SANDBAR 30/.023/HN " * 3)
    assert len(symbol_path(made)) < sum(map(sum, made.rows)) / 2


@given(st.floats(0, 400), st.integers(1, 40))
def test_modules_are_whole_printer_dots_and_fit_with_their_quiet_zone(
    available: float, version: int
) -> None:
    side = 17 + 4 * version
    module = best_module(available, side)
    if module is None:
        assert not fits((side + 8) * SMALLEST_MODULE, available)
        return
    dots = module * 600 / 72
    assert dots == pytest.approx(round(dots))
    assert fits(module * (side + 8), available)
    assert SMALLEST_MODULE <= module <= 0.6 * MM
    if module >= DESIGN_MODULE:
        assert dots % 2 == pytest.approx(0, abs=1e-9)  # whole dots at 300 dpi too


@pytest.mark.parametrize(
    ("available", "module"),
    [
        # version 1: 21 modules and 2 × 4 of quiet zone, 29 in all
        (29 * 0.95, None),
        (29 * 0.96, 0.96),  # 8 dots at 600 dpi, 0.339 mm
        (29 * 1.19, 1.08),  # 9 dots
        (29 * 1.2, 1.2),  # 10 dots, 0.423 mm
        (29 * 1.43, 1.2),
        (29 * 1.44, 1.44),
        (1000, 1.68),  # 14 dots, 0.593 mm
    ],
)
def test_a_module_grows_with_its_room(available: float, module: float | None) -> None:
    assert best_module(available, 21) == (module if module is None else pytest.approx(module))


def test_a_one_inch_label_holds_version_six_at_the_design_module() -> None:
    # 25.4 mm less 2 mm at either edge leaves 21.4; 49 modules of 0.4233 are 20.7, 53 are 22.4
    assert best_module(21.4 * MM, 41) == pytest.approx(DESIGN_MODULE)
    assert best_module(21.4 * MM, 45) == pytest.approx(1.08)  # 53 × 1.08 = 57.2 pt = 20.2 mm
