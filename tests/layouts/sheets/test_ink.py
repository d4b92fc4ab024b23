"""The box around ink is the one that a renderer finds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageOps

from tagend.fonts import OURS
from tagend.layouts.codes.code import DESIGN_MODULE, symbol
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Code, Face, Item, Path, Turn, rectangle, segment
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import apart, around, ink, on_sheet
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import page_image

TURNS: tuple[Turn, ...] = (0, 90, 180, 270)
MADE = symbol("T1")
ITEMS: dict[str, tuple[Item, ...]] = {
    "a line with its pen": (
        Path(segment(20, 30, 90, 30), line=6),
        Path(segment(20, 30, 20, 40), 6),
    ),
    "a filled box": (Path(rectangle(10, 12, 50, 30), fill=0),),
    "a circle": (Path(circle(50, 40, 20), line=1),),
    "a code": (Code(30, 20, DESIGN_MODULE, MADE),),
}


def rendered(sheet: Sheet) -> tuple[float, ...]:
    dark = ImageOps.invert(page_image(write_pdf([sheet], title="", creator=""), 600))
    box = dark.point(lambda value: 255 * (value > 127)).getbbox()
    assert box is not None
    return tuple(edge * 72 / 600 for edge in box)


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("items", ITEMS.values(), ids=ITEMS.keys())
def test_the_box_is_where_the_ink_is(items: tuple[Item, ...], turn: Turn) -> None:
    placed = Placed(Face("face", 120, 90, items), 30, 20, turn)
    box = ink(items)
    assert box is not None
    # A line's box is widened by half its pen at its ends too, where it has no ink.
    slack = 3.2 if "line" in next(k for k, v in ITEMS.items() if v is items) else 0.2
    assert on_sheet(box, placed) == pytest.approx(rendered(Sheet(200, 160, (placed,))), abs=slack)


def test_text_reaches_from_its_capitals_to_its_descenders() -> None:
    items = set_line("Hg", OURS.bold, 40).at(20, 60)
    box = ink(items)
    assert box is not None
    found = rendered(Sheet(200, 160, (Placed(Face("face", 200, 160, items), 0, 0),)))
    assert found[1] == pytest.approx(box[1], abs=0.2)
    assert box[0] <= found[0] + 0.13
    assert found[2] <= box[2] + 0.13  # a dot
    assert found[3] <= box[3] <= found[3] + 0.1 * 40


def test_nothing_has_no_box() -> None:
    assert ink(()) is None
    assert around(()) is None


SIZES = st.floats(1, 60)
BOX = st.tuples(st.floats(0, 100), st.floats(0, 100), SIZES, SIZES).map(
    lambda of: (of[0], of[1], of[0] + of[2], of[1] + of[3])
)


@given(BOX, BOX)
def test_boxes_apart_share_no_point_within(
    one: tuple[float, float, float, float], other: tuple[float, float, float, float]
) -> None:
    shared = (
        min(one[2], other[2]) - max(one[0], other[0]),
        min(one[3], other[3]) - max(one[1], other[1]),
    )
    assert apart(one, other) == (shared[0] <= 0 or shared[1] <= 0)
    assert apart(one, other) == apart(other, one)


def test_a_gap_is_asked_for_across_or_down() -> None:
    assert apart((0, 0, 10, 10), (13, 0, 20, 10), 3)
    assert not apart((0, 0, 10, 10), (13, 0, 20, 10), 4)
    assert apart((0, 0, 10, 10), (5, 14, 20, 20), 4)
