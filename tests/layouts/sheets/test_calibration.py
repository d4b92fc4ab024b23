"""What a ruler shows on the pages is what the printer did."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.printing.calibration import calibration_words
from tagend.cards.words.language import ENGLISH, languages, wording_in
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM, Box, Path, Step, TextRun
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.calibration import (
    CalibrationWords,
    calibration_sheets,
    edge_scale,
    long_rule,
)
from tagend.layouts.sheets.ink import apart, ink
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import Paper
from tagend.layouts.stock.stock import paper, shipped
from tests.layouts.drawn import boxes, is_grey_only, text

LARGE = [
    sheet
    for sheet in shipped().papers.values()
    if sheet.width > 139 * MM and sheet.height > 205 * MM
]
WORDS = calibration_words(ENGLISH, true=False)
# The pages are full of words, so those that are printed are what must find room.
PRINTED = [
    pytest.param(calibration_words(wording_in(language, None), true=true), id=f"{language} {true}")
    for language in languages()
    for true in (False, True)
]


def segments(item: object) -> list[tuple[float, float, float, float]]:
    assert isinstance(item, Path)
    return lines(item.steps)


def lines(steps: tuple[Step, ...]) -> list[tuple[float, float, float, float]]:
    ends = [(step[1], step[2]) for step in steps if len(step) == 3]
    return [(*a, *b) for a, b in zip(ends[::2], ends[1::2], strict=True)]


def runs(sheet: Sheet) -> list[TextRun]:
    return [item for item in sheet.placed[0].face.items if isinstance(item, TextRun)]


# --- the scale at an edge ---------------------------------------------------------------------


def ticks_by_figure() -> dict[str, float]:
    """Return where each figure's tick stands on a page that is printed true."""
    _, _, *rest = edge_scale(100, "front_x")
    figures = [item for item in rest if isinstance(item, TextRun)][:3]
    return {figure.text: figure.x + figure.width / 2 for figure in figures}


@given(shift=st.floats(-4, 4))
def test_the_scale_reads_the_shift_where_a_ruler_says_20_mm(shift: float) -> None:
    marks = ticks_by_figure()
    # Printed, every tick lies `shift` to the right; the ruler's 20 mm lies on the tick that
    # stands at 20 - shift on the page. Ticks go from +5 to -5 in proportion.
    place = 20 * MM - shift * MM
    share = (marks["+5"] - place) / (marks["+5"] - marks["−5"])
    assert 5 - 10 * share == pytest.approx(shift, abs=1e-6)


def test_there_is_a_tick_every_half_millimetre_from_15_to_25_mm() -> None:
    ticks = [x / MM for x, _, other, _ in segments(edge_scale(100, "front_x")[0]) if x == other]
    assert ticks == pytest.approx([15 + k / 2 for k in range(21)])


def test_the_zero_is_drawn_at_20_mm() -> None:
    ((x, _, other, _),) = segments(edge_scale(100, "front_x")[1])
    assert (x, other) == pytest.approx((20 * MM, 20 * MM))
    ((_, y, _, other),) = segments(edge_scale(100, "front_y", upright=True)[1])
    assert (y, other) == pytest.approx((20 * MM, 20 * MM))


def test_the_rules_are_100_mm_between_their_bold_ends() -> None:
    for upright in (False, True):
        _, ends, *_ = long_rule(50, 80, "rule", upright=upright)
        (one, other) = (segment[1] if upright else segment[0] for segment in segments(ends))
        assert other - one == pytest.approx(100 * MM)


def test_the_rules_are_100_mm_on_the_finished_page() -> None:
    pdf = write_pdf(calibration_sheets(paper("A4"), WORDS, with_back=True), title="", creator="")
    sizes = [(right - left, bottom - top) for left, top, right, bottom in boxes(pdf)]
    assert any(width == pytest.approx(100 * MM, abs=0.01) for width, _ in sizes)
    assert any(height == pytest.approx(100 * MM, abs=0.01) for _, height in sizes)


# --- the pages --------------------------------------------------------------------------------


@pytest.mark.parametrize("words", PRINTED)
@pytest.mark.parametrize("page", LARGE, ids=lambda page: page.name)
def test_nothing_on_the_pages_stands_on_anything_else(page: Paper, words: CalibrationWords) -> None:
    for sheet in calibration_sheets(page, words, with_back=True):
        check_apart(sheet)


@settings(max_examples=30)
@given(width=st.floats(139, 320), height=st.floats(205, 450))
def test_nor_on_any_other_paper(width: float, height: float) -> None:
    for sheet in calibration_sheets(Paper("own", width * MM, height * MM), WORDS, with_back=True):
        check_apart(sheet)


def check_apart(sheet: Sheet) -> None:
    words = [box for run in runs(sheet) if (box := ink([run])) is not None]
    drawn: list[Box] = []
    for item in sheet.placed[0].face.items:
        if isinstance(item, Path):
            drawn += [(min(a, c), min(b, d), max(a, c), max(b, d)) for a, b, c, d in segments(item)]
    page = (4 * MM, 4 * MM, sheet.width - 4 * MM, sheet.height - 4 * MM)
    for k, box in enumerate(words):
        assert box[0] >= page[0]
        assert box[1] >= page[1]
        assert box[2] <= page[2]
        assert box[3] <= page[3]
        assert all(apart(box, line) for line in drawn)
        # Runs of one line touch; none overlaps.
        assert all(apart(box, other, -0.01) for other in words[k + 1 :])


def test_the_pages_tell_what_to_do() -> None:
    sheets = calibration_sheets(paper("Letter"), WORDS, with_back=True)
    pdf = write_pdf(sheets, title="", creator="")
    front, back = (" ".join(text(pdf, page).split()) for page in (0, 1))
    for key in ("front_x", "front_y", "rule_x", "rule_y"):
        assert f"{key}" in front
    assert "Print this page at 100 %" in front
    assert f"{len(WORDS.front)}. Store what you read" in front
    assert "back_x and back_y" in back
    assert is_grey_only(pdf)


def test_the_crosses_stand_20_mm_from_all_edges() -> None:
    (sheet,) = calibration_sheets(paper("A4"), WORDS, with_back=False)
    crosses = [
        ((x1 + x2) / 2, (y1 + y2) / 2)
        for item in sheet.placed[0].face.items
        if isinstance(item, Path) and len(found := segments(item)) == 2
        for x1, y1, x2, y2 in found
        if abs(x2 - x1) + abs(y2 - y1) == pytest.approx(6 * MM)
    ]
    for x in (20 * MM, 190 * MM):
        for y in (20 * MM, 277 * MM):
            assert sum(place == pytest.approx((x, y)) for place in crosses) == 2  # its two arms


def test_a_printer_for_one_side_needs_one_page() -> None:
    assert [sheet.side for sheet in calibration_sheets(paper("A4"), WORDS, with_back=False)] == [
        "front"
    ]
    both = calibration_sheets(paper("A4"), WORDS, with_back=True)
    assert [sheet.side for sheet in both] == ["front", "back"]


def test_a_paper_too_small_for_the_rules_is_refused_with_what_would_do() -> None:
    with pytest.raises(Refused) as caught:
        calibration_sheets(paper("A6"), WORDS, with_back=False)
    assert str(caught.value) == (
        "A6, 105 × 148 mm, is too small to measure a printer with; use a larger one, such as A5 "
        "or Letter"
    )
    calibration_sheets(paper("A5"), WORDS, with_back=True)


def test_a_paper_too_small_for_the_words_is_refused_too() -> None:
    long = replace(WORDS, front=WORDS.front * 2)
    calibration_sheets(paper("A4"), long, with_back=True)
    with pytest.raises(Refused):
        calibration_sheets(paper("A5"), long, with_back=True)
