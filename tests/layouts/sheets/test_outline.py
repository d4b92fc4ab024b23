"""The outline of any stock is true to size, says what it is, and can be read."""

import pytest

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Box, TextRun
from tagend.layouts.paper.rulers import true_size_rules
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import apart, ink, on_sheet
from tagend.layouts.sheets.outline import OutlineWords, Stocked, stock_outline
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import LabelSheet, Paper
from tagend.layouts.stock.stock import card_size, label_sheet, paper, shipped
from tests.layouts.drawn import boxes, is_grey_only, text

LETTER = paper("Letter")
RULE = true_size_rules("100 % print: this is 50 mm", "and this is 2 in", OURS.medium).full
TOLD = ("a sheet, 85.6 × 53.98 mm", "Hold it against the real one.")
NEAR = 0.01 * MM
STOCK: list[Stocked] = [
    *shipped().labels.values(),
    *shipped().cards.values(),
    *shipped().papers.values(),
]
SHEETS = [sheet for sheet in shipped().labels.values() if not sheet.on_roll]
every_stock = pytest.mark.parametrize(
    "stock", STOCK, ids=lambda stock: f"{type(stock).__name__} {stock.name}"
)


def outline(stock: Stocked, page: Paper = LETTER) -> Sheet:
    return stock_outline(stock, page, OutlineWords(TOLD, RULE, OURS))


def pdf(stock: Stocked) -> bytes:
    return write_pdf([outline(stock)], title="", creator="layouts")


def outlined(found: list[Box], width: float, height: float) -> list[tuple[float, float]]:
    """Return the corners of all boxes of a size, to 0.01 mm."""
    return [
        (left, top)
        for left, top, right, bottom in found
        if abs(right - left - width) < NEAR and abs(bottom - top - height) < NEAR
    ]


@pytest.mark.parametrize("stock", SHEETS, ids=lambda stock: stock.name)
def test_every_label_is_outlined_in_its_place_on_the_finished_page(stock: LabelSheet) -> None:
    found = outlined(boxes(pdf(stock)), stock.width, stock.height)
    assert len(found) == stock.columns * stock.rows
    for (x, y), place in zip(sorted(stock.places), sorted(found), strict=True):
        assert place == pytest.approx((x, y), abs=NEAR)


@every_stock
def test_every_stock_is_outlined_in_its_size_upright_or_lying(stock: Stocked) -> None:
    found = boxes(pdf(stock))
    upright = outlined(found, stock.width, stock.height)
    assert upright or outlined(found, stock.height, stock.width)


@every_stock
def test_its_name_and_all_words_stand_where_printers_print(stock: Stocked) -> None:
    sheet = outline(stock)
    for placed in sheet.placed:
        for item in placed.face.items:
            if isinstance(item, TextRun):
                box = ink([item])
                assert box is not None
                left, top, right, bottom = on_sheet(box, placed)
                assert min(left, top) >= 5 * MM - NEAR
                assert right <= sheet.width - 5 * MM + NEAR
                assert bottom <= sheet.height - 5 * MM + NEAR
    assert stock.name in text(pdf(stock)).replace("\n", " ")


@pytest.mark.parametrize("stock", SHEETS, ids=lambda stock: stock.name)
def test_the_labels_at_the_corners_are_seen_whole(stock: LabelSheet) -> None:
    words = outline(stock).placed[-1].box
    for k in (0, stock.columns - 1, -stock.columns, -1):
        x, y = stock.places[k]
        label = (x, y, x + stock.width, y + stock.height)
        assert apart(label, words) or stock.rows <= 2


def test_a_label_sheet_is_drawn_on_its_own_page_and_a_card_on_the_page_in_the_printer() -> None:
    a4 = outline(label_sheet("a4-3x7-63.5x38.1"))
    assert (a4.width, a4.height) == pytest.approx((210 * MM, 297 * MM))
    for small in (card_size("ID-1"), label_sheet("roll-51x25")):
        sheet = outline(small)
        assert (sheet.width, sheet.height) == (612, 792)
        drawn, words = sheet.placed
        (box,) = (ink([item]) for item in drawn.face.items)
        assert box is not None
        assert apart(box, words.box)


def test_a_paper_larger_than_the_page_is_a_page_of_its_own() -> None:
    sheet = outline(paper("A3"))
    assert (sheet.width, sheet.height) == pytest.approx((297 * MM, 420 * MM))


def test_a_card_that_fits_only_lying_is_turned() -> None:
    found = boxes(write_pdf([outline(card_size("index-5x8"), paper("A5"))], title="", creator=""))
    assert outlined(found, 203.2 * MM, 127 * MM) or outlined(found, 127 * MM, 203.2 * MM)


def test_all_ink_is_grey_and_the_check_rule_is_there() -> None:
    for stock in (label_sheet("letter-3x4-50.8round"), card_size("ID-1"), paper("A4")):
        assert is_grey_only(pdf(stock))
        assert "100 % print: this is 50 mm" in text(pdf(stock))
