import pytest

from tagend.cards.faces.block import Block, hung, small_lines, stacked
from tagend.cards.faces.code_block import code_block
from tagend.cards.words.cautions import cautions
from tagend.cards.words.language import ENGLISH
from tagend.fonts import OURS
from tagend.layouts.codes.code import QUIET, SMALLEST_MODULE, symbol
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.text import set_line
from tests.seen import codes, faults, runs, words
from tests.told import scale

SCALE = scale()
EDGE = 20.0  # points
SYMBOL = symbol("TAG3:SANDBAR EIGHT:W8:BUTT PL*3/4:30*23*HN*25-B:24*13*FC*14-NS:NQ")
LEGEND = ("The code is this recipe as text, butt to fly:", "length*diameter*material")


def face(block: Block, width: float) -> Face:
    """Return a face with paper all round the block, as a card's inset is."""
    items = shifted(block.items, EDGE, EDGE)
    return Face("back", width + 2 * EDGE, block.height + 2 * EDGE, items)


def test_the_code_is_19_mm_or_what_its_module_needs() -> None:
    block = code_block(SYMBOL, LEGEND, SCALE, 226)
    assert block is not None
    card = face(block, 226)
    assert faults(card, EDGE) == []
    (code,) = codes(card)
    assert code.module >= SMALLEST_MODULE
    assert 0.85 * 19 * MM <= code.symbol.side * code.module <= 19 * MM


def test_the_legend_stands_beside_the_code_and_is_no_higher() -> None:
    block = code_block(SYMBOL, LEGEND * 20, SCALE, 226)
    assert block is not None
    card = face(block, 226)
    (code,) = codes(card)
    right = code.x + (code.symbol.side + QUIET) * code.module
    assert all(run.x >= right - 1e-6 for run in runs(card))
    assert words(card).startswith(" ".join(LEGEND))
    assert block.height == pytest.approx((code.symbol.side + 2 * QUIET) * code.module)


def test_on_a_narrow_card_the_first_line_of_the_legend_stands_below_the_code() -> None:
    block = code_block(SYMBOL, ("W" * 10, "more"), SCALE, 90)
    assert block is not None
    card = face(block, 90)
    assert faults(card, EDGE) == []
    (code,) = codes(card)
    below = code.y + (code.symbol.side + QUIET) * code.module
    assert all(run.x == EDGE and run.y > below for run in runs(card))
    assert words(card) == "W" * 10


def test_where_the_width_is_too_narrow_there_is_no_code() -> None:
    assert code_block(SYMBOL, (), SCALE, 50) is None


def test_cautions_keep_their_order() -> None:
    hanging = (hung("!", each.short, SCALE, 226) for each in cautions(ENGLISH, "fly"))
    card = face(stacked(hanging), 226)
    assert faults(card, EDGE) == []
    shown = " ".join(f"! {caution.short}" for caution in cautions(ENGLISH, "fly"))
    assert words(card) == set_line(shown, OURS.medium, 7.6).text


@pytest.mark.parametrize("width", [120, 226, 400])
def test_every_line_is_set_whole(width: float) -> None:
    card = face(small_lines(LEGEND, SCALE, width), width)
    assert words(card) == " ".join(LEGEND)
    assert faults(card, EDGE) == []
