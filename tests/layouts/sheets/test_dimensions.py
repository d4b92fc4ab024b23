"""A dimension line runs from place to place and says how far that is."""

import pytest

from tagend.layouts.paper.face import MM, TextRun
from tagend.layouts.sheets.dimensions import Dimension, across, down
from tagend.layouts.sheets.ink import ink


def words(dimension: Dimension) -> str:
    return "".join(item.text for item in dimension.figure(str) if isinstance(item, TextRun))


def test_the_figure_says_millimetres_and_inches() -> None:
    assert words(across(10, 10 + 2.625 * 72, 50)).replace("\u200a", "") == "66.67 mm · 2⅝ in"
    assert words(down(0, 37 * MM, 50)) == "37 mm · 1.457 in"


def test_the_line_ends_at_both_places() -> None:
    box = ink([across(100, 300, 50).line])
    assert box is not None
    assert (box[0], box[2]) == pytest.approx((100, 300), abs=0.13)
    box = ink([down(100, 300, 50).line])
    assert box is not None
    assert (box[1], box[3]) == pytest.approx((100, 300), abs=0.13)


def test_the_figure_stands_in_the_middle_of_its_line() -> None:
    for dimension in (across(100, 300, 50), down(100, 300, 50)):
        left, top, right, bottom = dimension.figure_box
        x, y = (left + right) / 2, (top + bottom) / 2
        assert (x, y) == pytest.approx((200, 50) if dimension.line_box[0] == 100 else (50, 200))


def test_a_figure_that_would_hide_its_line_stands_above_it() -> None:
    short = across(100, 100 + 17 * MM, 50)
    assert short.figure_box[3] <= short.line_box[1] + 1e-6


@pytest.mark.parametrize("sign", [".", ","])
def test_a_figure_keeps_within_its_white_paper_in_any_style(sign: str) -> None:
    dimension = across(100, 100 + 66.67 * MM, 50)
    paper, *runs = dimension.figure(lambda text: text.replace(".", sign))
    left, top, right, bottom = dimension.figure_box
    assert ink([paper]) == pytest.approx((left, top, right, bottom))
    box = ink(runs)
    assert box is not None
    assert left + 0.8 * MM <= box[0] + 1e-9
    assert box[2] <= right - 0.8 * MM + 1e-9
    assert top < box[1]


def test_a_figure_may_stand_anywhere_along() -> None:
    moved = across(0, 20, 50, figure_at=80)
    assert (moved.figure_box[0] + moved.figure_box[2]) / 2 == pytest.approx(80)


def test_dimensions_are_clear_only_when_no_figure_stands_on_anything() -> None:
    one = across(100, 300, 50)
    assert one.is_clear_of([across(100, 300, 80)])
    assert not one.is_clear_of([across(100, 300, 52)])  # figure on figure
    assert not one.is_clear_of([down(10, 90, 200, figure_at=20)])  # a line through the figure
    assert one.is_clear_of([down(10, 90, 120, figure_at=20)])  # lines may cross
