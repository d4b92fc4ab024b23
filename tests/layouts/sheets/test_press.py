"""Pages for a print shop: their boxes tell what is trimmed, and nothing is printed there twice."""

from io import BytesIO

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.layouts.paper.face import MM, Face, Path, rectangle
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.ink import apart, ink
from tagend.layouts.sheets.press import press_sheets
from tagend.layouts.sheets.sheet import Sheet, Trim
from tagend.layouts.stock.formats import CardSize
from tagend.layouts.stock.stock import card_size, shipped
from tests.layouts.drawn import boxes, is_grey_only


def card(size: CardSize, *, back: bool = True) -> Card:
    ink = (Path(rectangle(9, 9, size.width - 18, size.height - 18), line=0.5),)
    front, behind = (Face(side, size.width, size.height, ink) for side in ("front", "back"))
    return Card(front, behind if back else None)


def written(*cards: Card) -> bytes:
    return write_pdf(press_sheets(cards), title="", creator="")


def numbers(box: pypdf.generic.RectangleObject) -> tuple[float, ...]:
    return tuple(float(edge) for edge in box)


@pytest.mark.parametrize("size", shipped().cards.values(), ids=lambda size: size.name)
def test_the_boxes_are_the_card_and_its_bleed(size: CardSize) -> None:
    for page in pypdf.PdfReader(BytesIO(written(card(size)))).pages:
        left, bottom, right, top = numbers(page.trimbox)
        # 0.001 pt is what the file is rounded to.
        assert (right - left, top - bottom) == pytest.approx((size.width, size.height), abs=0.002)
        bleed = numbers(page.bleedbox)
        assert bleed == pytest.approx(
            (left - 3 * MM, bottom - 3 * MM, right + 3 * MM, top + 3 * MM), abs=0.002
        )
        width, height = numbers(page.mediabox)[2:]
        assert 0 < bleed[0] < bleed[2] < width
        assert 0 < bleed[1] < bleed[3] < height
        # The card stands in the middle.
        assert (left, bottom) == pytest.approx((width - right, height - top), abs=0.002)


def test_the_design_stands_within_the_trim_box() -> None:
    size = card_size("ID-1")
    pdf = written(card(size))
    page = pypdf.PdfReader(BytesIO(pdf)).pages[0]
    left, bottom, right, top = numbers(page.trimbox)
    height = float(page.mediabox.height)
    inner = (left + 9, height - top + 9, right - 9, height - bottom - 9)
    assert any(box == pytest.approx(inner, abs=0.01) for box in boxes(pdf))


def test_crop_marks_stand_at_the_trim_and_outside_the_bleed() -> None:
    size = card_size("ID-1")
    (sheet,) = press_sheets([card(size, back=False)])
    trim = sheet.trim
    assert trim is not None
    xs, ys = (trim.x, trim.x + trim.width), (trim.y, trim.y + trim.height)
    bleed = (xs[0] - trim.bleed, ys[0] - trim.bleed, xs[1] + trim.bleed, ys[1] + trim.bleed)
    assert len(sheet.marks) == 8
    for mark in sheet.marks:
        box = ink([mark])
        assert box is not None
        x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
        assert any(x == pytest.approx(edge) for edge in xs) or any(
            y == pytest.approx(edge) for edge in ys
        )
        assert apart(box, bleed, -0.13)  # but for half a pen
        assert box[2] - box[0] < 5.1 * MM
        assert box[3] - box[1] < 5.1 * MM


def test_each_side_is_a_page_and_backs_follow_their_fronts() -> None:
    size = card_size("ID-1")
    sheets = press_sheets([card(size), card(size, back=False), card(size)])
    assert [[p.face.name for p in sheet.placed] for sheet in sheets] == [
        ["front"],
        ["back"],
        ["front"],
        [],  # an empty back keeps the pairs
        ["front"],
        ["back"],
    ]
    assert [sheet.side for sheet in sheets] == ["front", "back"] * 3


def test_fronts_alone_are_fronts_alone() -> None:
    size = card_size("ID-1")
    assert len(press_sheets([card(size, back=False)] * 3)) == 3


def test_cards_of_several_sizes_have_pages_of_several_sizes() -> None:
    sheets = press_sheets([card(card_size("ID-1")), card(card_size("A7"))])
    assert sheets[0].width - 85.6 * MM == pytest.approx(sheets[2].width - 74 * MM)


def test_a_page_after_a_trimmed_one_has_no_boxes_of_its_own() -> None:
    (trimmed,) = press_sheets([card(card_size("ID-1"), back=False)])
    pdf = write_pdf([trimmed, Sheet(612, 792, ())], title="", creator="")
    first, second = pypdf.PdfReader(BytesIO(pdf)).pages
    assert "/TrimBox" in first
    assert "/BleedBox" in first
    assert "/TrimBox" not in second
    assert "/BleedBox" not in second


def test_a_trim_out_of_the_middle_is_told_from_the_top_left() -> None:
    sheet = Sheet(300, 200, (), trim=Trim(30, 20, 100, 80, bleed=5))
    page = pypdf.PdfReader(BytesIO(write_pdf([sheet], title="", creator=""))).pages[0]
    # 200 - 20 - 80 = 100 from below
    assert numbers(page.trimbox) == (30, 100, 130, 180)
    assert numbers(page.bleedbox) == (25, 95, 135, 185)


def test_all_ink_is_grey() -> None:
    assert is_grey_only(written(card(card_size("ID-1"))))


@settings(max_examples=30)
@given(width=st.floats(40, 800), height=st.floats(40, 800))
def test_no_mark_touches_a_card_of_any_size(width: float, height: float) -> None:
    (sheet,) = press_sheets([card(CardSize("own", width, height), back=False)])
    trim = sheet.trim
    assert trim is not None
    inside = (trim.x, trim.y, trim.x + trim.width, trim.y + trim.height)
    for mark in sheet.marks:
        box = ink([mark])
        assert box is not None
        assert apart(box, inside, trim.bleed - 0.13)
        assert box[0] >= 0
        assert box[1] >= 0
        assert box[2] <= sheet.width
        assert box[3] <= sheet.height
