"""The picture of any stock has its true measures, in lines and in words, and all can be read."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, TextRun
from tagend.layouts.paper.lengths import in_mm
from tagend.layouts.paper.rulers import true_size_rules
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import Box, apart, ink, on_sheet
from tagend.layouts.sheets.margins import box_of
from tagend.layouts.sheets.measures import sheet_dimensions
from tagend.layouts.sheets.picture import PictureWords, Stocked, stock_picture
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import LabelSheet, Paper
from tagend.layouts.stock.stock import card_size, label_sheet, merge, paper, shipped
from tests.layouts.drawn import boxes, is_grey_only, text

LETTER = paper("Letter")
RULE = true_size_rules("100 % print: this is 50 mm", "and this is 2 in", OURS.medium).full
WORDS = PictureWords(("a sheet, 85.6 × 53.98 mm", "Hold it against the real one."), RULE, OURS, str)
NEAR = 0.01 * MM
STOCK: list[Stocked] = [
    *shipped().labels.values(),
    *shipped().cards.values(),
    *shipped().papers.values(),
]
SHEETS = [sheet for sheet in shipped().labels.values() if not sheet.on_roll]


def picture(stock: Stocked, page: Paper = LETTER) -> Sheet:
    return stock_picture(stock, page, WORDS)


def pdf(stock: Stocked) -> bytes:
    return write_pdf([picture(stock)], title="", creator="layouts")


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


@pytest.mark.parametrize("stock", STOCK, ids=lambda stock: f"{type(stock).__name__} {stock.name}")
def test_every_stock_is_outlined_in_its_size_upright_or_lying(stock: Stocked) -> None:
    found = boxes(pdf(stock))
    upright = outlined(found, stock.width, stock.height)
    assert upright or outlined(found, stock.height, stock.width)


@pytest.mark.parametrize("stock", STOCK, ids=lambda stock: f"{type(stock).__name__} {stock.name}")
def test_its_measures_are_told_in_both_units(stock: Stocked) -> None:
    lengths = [stock.width, stock.height]
    if isinstance(stock, LabelSheet) and not stock.on_roll:
        right = stock.paper.width - stock.places[-1][0] - stock.width
        lengths += [stock.left, stock.top, right] + [stock.pitch_x] * (stock.columns > 1)
        lengths += [stock.pitch_y] * (stock.rows > 1)
    read = text(pdf(stock))
    for length in lengths:
        if length > NEAR:
            assert in_mm(length) in read
    assert " in" in read
    assert stock.name in read


@pytest.mark.parametrize("stock", SHEETS, ids=lambda stock: stock.name)
def test_no_figure_hides_another_and_the_title_hides_none(stock: LabelSheet) -> None:
    dimensions = sheet_dimensions(stock)
    for one, other in combinations(dimensions, 2):
        assert one.is_clear_of([other])
    title = box_of(picture(stock).placed[-1])
    for each in dimensions:
        assert apart(each.figure_box, title)
        assert apart(each.line_box, title)


@pytest.mark.parametrize("stock", STOCK, ids=lambda stock: f"{type(stock).__name__} {stock.name}")
def test_all_words_stand_where_printers_print(stock: Stocked) -> None:
    sheet = picture(stock)
    for placed in sheet.placed:
        for item in placed.face.items:
            if isinstance(item, TextRun):
                box = ink([item])
                assert box is not None
                left, top, right, bottom = on_sheet(box, placed)
                assert min(left, top) >= 5 * MM - NEAR
                assert right <= sheet.width - 5 * MM + NEAR
                assert bottom <= sheet.height - 5 * MM + NEAR


def test_a_label_sheet_is_drawn_on_its_own_page_and_a_card_on_the_page_in_the_printer() -> None:
    a4 = picture(label_sheet("a4-3x7-63.5x38.1"))
    assert (a4.width, a4.height) == (210 * MM, 297 * MM)
    card = picture(card_size("ID-1"))
    assert (card.width, card.height) == (612, 792)
    roll = picture(label_sheet("roll-51x25"))
    assert (roll.width, roll.height) == (612, 792)


def test_a_paper_larger_than_the_page_is_a_page_of_its_own() -> None:
    sheet = picture(paper("A3"))
    assert (sheet.width, sheet.height) == (297 * MM, 420 * MM)


def test_a_card_that_fits_only_lying_is_turned() -> None:
    found = boxes(pdf(card_size("index-5x8")))
    assert outlined(found, 127 * MM, 203.2 * MM)


def test_labels_are_numbered_as_they_are_counted() -> None:
    stock = label_sheet("letter-3x10-66.7x25.4")
    (face, _) = (placed.face for placed in picture(stock).placed)
    numbers = {int(i.text): i for i in face.items if isinstance(i, TextRun) and i.text.isdigit()}
    assert set(numbers) < set(range(1, 31))
    assert len(numbers) > 20  # those where no figure stands
    for number, run in numbers.items():
        x, y = stock.places[number - 1]
        assert x < run.x < x + stock.width
        assert y < run.y < y + stock.height


def test_all_ink_is_grey_and_the_check_rule_is_there() -> None:
    for stock in (label_sheet("letter-3x4-50.8round"), card_size("ID-1"), paper("A4")):
        assert is_grey_only(pdf(stock))
        assert "this is 50 mm" in text(pdf(stock))


@settings(max_examples=40)
@given(
    columns=st.integers(1, 6),
    rows=st.integers(1, 15),
    width=st.floats(26, 90),
    height=st.floats(10, 60),
    gap=st.sampled_from([0, 2.5, 9]),
    left=st.floats(0, 40),
    top=st.floats(0, 40),
)
def test_own_stock_is_pictured_too(
    columns: int, rows: int, width: float, height: float, gap: float, left: float, top: float
) -> None:
    across, down = left + columns * (width + gap), top + rows * (height + gap)
    entry = {
        "paper": f"{max(across, 110):.2f} x {max(down, 110):.2f} mm",
        "columns": columns,
        "rows": rows,
        "size": f"{width:.2f} x {height:.2f} mm",
        "margin": f"{left:.2f} x {top:.2f} mm",
        "pitch": f"{width + gap:.2f} x {height + gap:.2f} mm",
    }
    try:
        stock = merge({"labels": {"mine": entry}}).labels["mine"]
    except ValueError:
        return  # rounding left a label over the edge
    found = boxes(write_pdf([picture(stock)], title="", creator=""))
    assert len(outlined(found, stock.width, stock.height)) >= columns * rows


@pytest.mark.parametrize("stock", [label_sheet("a4-3x7-63.5x38.1"), card_size("ID-1")])
def test_what_is_told_and_all_measures_are_in_the_language_of_the_page(stock: Stocked) -> None:
    def comma(measure: str) -> str:
        return measure.replace(".", ",")

    rule = true_size_rules("esto son 50 mm", "y esto 2 in", OURS.medium).full
    words = PictureWords(("una hoja",), rule, OURS, comma)
    read = text(write_pdf([stock_picture(stock, LETTER, words)], title="", creator=""))
    for told in ("una hoja", "esto son 50 mm", "y esto 2 in"):
        assert told in read
    measures = read.replace(stock.name, "")
    assert comma(in_mm(stock.width)) in measures
    assert "." not in measures
