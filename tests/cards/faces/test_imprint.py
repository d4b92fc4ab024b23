"""A shop's imprint: its words, and its logo at their right end."""

from itertools import product
from zlib import compress

import pytest

from tagend.cards.faces.block import LEADING, Block, Scale
from tagend.cards.faces.imprint import Imprint, imprint_block
from tagend.cards.faces.panel import INSET
from tagend.layouts.paper.face import Face, Picture, shifted
from tagend.layouts.paper.raster import Raster
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import apart, ink
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import page_image
from tests.seen import faults, glyphs, runs, words
from tests.told import scale as sized

NAME, LINE = "The Wrack Line Bench", "Leaders tied by hand, one knot at a time"
ID_1 = 242.6 - 2 * INSET  # ISO/IEC 7810: 85.6 mm
SCALES = (sized(1), sized(1.4), sized(2))
WORDS = ((NAME, LINE), (NAME, None), (None, LINE), (NAME * 3, LINE), ("W" * 16, LINE))


def logo(ratio: float) -> Raster:
    """Return a black box of a ratio."""
    width = round(120 * ratio)
    return Raster(width, 120, 8, compress(bytes(120 * width)))


def face(block: Block, width: float) -> Face:
    items = shifted(block.items, INSET, INSET)
    return Face("imprint", width + 2 * INSET, block.height + 2 * INSET, items)


def picture(block: Block) -> Picture:
    (found,) = (item for item in block.items if isinstance(item, Picture))
    return found


def test_an_imprint_says_what_is_given() -> None:
    both = imprint_block(Imprint(NAME, "Tied by hand", None), sized(1), 226)
    assert words(face(both, 226)) == f"{NAME} Tied by hand"
    assert [run.font for run in runs(face(both, 226))] == ["bold", "medium"]
    none = imprint_block(Imprint(None, None, None), sized(1), 226)
    assert (none.items, none.height) == ((), 0)
    line = imprint_block(Imprint(None, "Tied by hand", None), sized(1), 226)
    assert words(face(line, 226)) == "Tied by hand"


@pytest.mark.parametrize(
    ("said", "scale", "ratio"), list(product(WORDS, SCALES, (0.3, 1, 4 / 3, 4, 12)))
)
def test_the_logo_stands_beside_the_words(
    said: tuple[str | None, str | None], scale: Scale, ratio: float
) -> None:
    block = imprint_block(Imprint(*said, logo(ratio)), scale, ID_1)
    card, shown = face(block, ID_1), picture(block)
    assert faults(card, INSET) == []
    assert shown.width / shown.height == pytest.approx(ratio)
    assert shown.width <= 0.3 * ID_1 + 1e-9 or said[0] == "W" * 16
    assert 0 <= shown.y <= shown.y + shown.height <= block.height + 1e-9
    for run in runs(face(block, ID_1)):
        moved = shifted([shown], INSET, INSET)
        box = ink(moved)
        assert box is not None
        assert apart(glyphs(run), box, 0.3 * scale.small)


@pytest.mark.parametrize("scale", SCALES)
def test_it_ends_at_the_right_and_is_as_high_as_two_small_lines(scale: Scale) -> None:
    shown = picture(imprint_block(Imprint(NAME, None, logo(1.2)), scale, ID_1))
    assert shown.x + shown.width == pytest.approx(ID_1)
    assert shown.height == pytest.approx(2 * LEADING * scale.small)


def test_it_grows_to_the_height_of_more_lines() -> None:
    block = imprint_block(Imprint(NAME * 4, LINE * 2, logo(0.5)), sized(1), ID_1)
    shown, lines = picture(block), len({run.y for run in runs(face(block, ID_1))})
    assert lines > 3
    assert 2 * LEADING * 7.6 < shown.height <= block.height


def test_a_wide_logo_takes_three_tenths_of_the_width() -> None:
    shown = picture(imprint_block(Imprint(NAME, LINE, logo(12)), sized(1), ID_1))
    assert shown.width == pytest.approx(0.3 * ID_1)


def test_it_stands_above_a_word_that_is_too_wide_beside_it() -> None:
    block = imprint_block(Imprint("Wrackwrackwrackwrackwrack", None, logo(3)), sized(1), 102)
    shown = picture(block)
    assert shown.x == shown.y == 0
    assert all(run.y > INSET + shown.height for run in runs(face(block, 102)))


@pytest.mark.parametrize("ratio", [0.3, 1, 12, 60])
def test_without_words_it_stands_alone(ratio: float) -> None:
    block = imprint_block(Imprint(None, None, logo(ratio)), sized(1), ID_1)
    assert block.items == (picture(block),)
    assert block.height == picture(block).height <= 2 * LEADING * 7.6 + 1e-9
    assert picture(block).width <= ID_1 + 1e-9


def test_its_ink_fills_its_box_and_no_more() -> None:
    block = imprint_block(Imprint(NAME, LINE, logo(1.5)), sized(1), ID_1)
    shown = picture(block)
    alone = Face("logo", ID_1, block.height, (shown,))
    sheet = Sheet(ID_1, block.height, (Placed(alone, 0, 0),))
    page = page_image(write_pdf([sheet], title="", creator=""), 600)
    dark = page.point(lambda value: 255 * (value < 128)).getbbox()
    assert dark is not None
    box = (shown.x, shown.y, shown.x + shown.width, shown.y + shown.height)
    assert [edge * 72 / 600 for edge in dark] == pytest.approx(box, abs=0.13)  # a dot
