import math
from collections.abc import Iterable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.paper.face import MM, Path
from tagend.layouts.sheets.cutouts import Axis, Cutout
from tagend.layouts.sheets.marks import corner_guides, sheet_marks
from tagend.layouts.sheets.shelves import Slot

Line = tuple[float, float, float, float]


def lines(paths: Iterable[Path]) -> list[Line]:
    return [line(path) for path in paths]


def line(path: Path) -> Line:
    start, end = path.steps
    assert start[0] == "move"
    assert end[0] == "line"
    return start[1], start[2], end[1], end[2]


def upright(paths: Iterable[Path]) -> list[Line]:
    return [line for line in lines(paths) if line[0] == line[2]]


def level(paths: Iterable[Path]) -> list[Line]:
    return [line for line in lines(paths) if line[1] == line[3]]


def piece(left: float, right: float, top: float, bottom: float, fold: Axis | None = None) -> Slot:
    return Slot(Cutout(right - left, bottom - top, (), fold), left, top)


def grid(left: float, top: float, columns: int, rows: int, side: float) -> list[Slot]:
    return [
        Slot(Cutout(side, side, ()), left + column * side, top + row * side)
        for row in range(rows)
        for column in range(columns)
    ]


def test_cards_that_abut_are_marked_in_the_margin_only() -> None:
    # 2 × 3 cells of 100 from (100, 100) on 400 × 500: 3 upright and 4 level cuts, both ends.
    marks = sheet_marks(grid(100, 100, 2, 3, 100), 400, 500)
    assert {x for x, _, _, _ in upright(marks)} == {100, 200, 300}
    assert {y for _, y, _, _ in level(marks)} == {100, 200, 300, 400}
    assert len(marks) == 2 * 3 + 2 * 4
    for x1, y1, x2, y2 in lines(marks):
        assert max(x1, x2) < 100 or min(x1, x2) > 300 or max(y1, y2) < 100 or min(y1, y2) > 400


def test_marks_are_thin_and_black() -> None:
    for mark in sheet_marks(grid(100, 100, 2, 2, 100), 400, 400):
        assert (mark.line, mark.grey, mark.fill) == (0.25, 0, None)


@pytest.mark.parametrize(
    ("margin_mm", "start_mm", "end_mm"),
    [
        (25, 17, 22),  # 5 mm long, 3 mm off the card
        (13, 5, 10),  # the least margin that holds all of it: 5 + 5 + 3
        (11, 5, 8),  # shorter
        (9, 5, 7),  # and nearer to the card
        (8, 5, 7),
        (7, 4, 6),  # and nearer to the sheet's edge, since the cards are
        (5, 2, 4),
        (2, 0, 1),
    ],
)
def test_a_mark_shrinks_with_the_margin(margin_mm: float, start_mm: float, end_mm: float) -> None:
    margin = margin_mm * MM
    marks = sheet_marks(grid(margin, margin, 1, 1, 100), 100 + 2 * margin, 100 + 2 * margin)
    _, y1, _, y2 = upright(marks)[0]
    assert (y1 / MM, y2 / MM) == pytest.approx((start_mm, end_mm))
    _, y1, _, y2 = upright(marks)[1]
    edge = (100 + 2 * margin) / MM
    assert (y1 / MM, y2 / MM) == pytest.approx((edge - end_mm, edge - start_mm))


def test_without_a_margin_there_is_no_mark() -> None:
    assert sheet_marks(grid(0, 0, 2, 2, 100), 200, 200) == ()


def test_both_sides_of_a_gutter_are_marked() -> None:
    rows = [piece(100, 200, 100, 200), piece(220, 320, 100, 200)]
    marks = sheet_marks(rows, 420, 300)
    assert sorted({x for x, _, _, _ in upright(marks)}) == [100, 200, 220, 320]


def test_a_fold_is_dashed_and_halfway() -> None:
    rows = [piece(100, 300, 100, 200, "upright"), piece(300, 500, 100, 200)]
    folds = [mark for mark in sheet_marks(rows, 600, 300) if mark.dash]
    assert [x for x, _, _, _ in upright(folds)] == [200, 200]
    assert level(folds) == []
    rows = [piece(100, 200, 100, 300, "level")]
    folds = [mark for mark in sheet_marks(rows, 300, 400) if mark.dash]
    assert [y for _, y, _, _ in level(folds)] == [200, 200]
    assert upright(folds) == []


def test_rows_cut_differently_have_their_own_marks_between_them() -> None:
    gap = 6 * MM
    rows = [
        piece(100, 250, 100, 200),
        piece(250, 400, 100, 200),
        piece(100, 200, 200 + gap, 300 + gap),
        piece(200, 300, 200 + gap, 300 + gap),
    ]
    marks = upright(sheet_marks(rows, 500, 400 + gap))
    above = [mark for mark in marks if 200 < mark[1] < 200 + gap / 2]
    below = [mark for mark in marks if 200 + gap / 2 < mark[1] < 200 + gap]
    # Each 1 to 2.5 mm off its own row, so that 1 mm stays free between the two.
    assert [x for x, _, _, _ in above] == [100, 250, 400]
    assert {(y1, y2) for _, y1, _, y2 in above} == {(200 + MM, 200 + 2.5 * MM)}
    assert [x for x, _, _, _ in below] == [100, 200, 300]
    assert {(round(y1, 6), round(y2, 6)) for _, y1, _, y2 in below} == {
        (round(200 + 3.5 * MM, 6), round(200 + 5 * MM, 6))
    }


def test_a_short_last_row_shares_the_marks_of_the_rows_above() -> None:
    rows = [*grid(100, 100, 3, 1, 100), piece(100, 200, 200, 300)]
    marks = sheet_marks(rows, 500, 400)
    at_the_foot = [mark for mark in upright(marks) if mark[1] > 300]
    assert [x for x, _, _, _ in at_the_foot] == [100, 200, 300, 400]
    assert all(y2 < 100 or y1 > 300 for _, y1, _, y2 in upright(marks))


def test_a_folded_card_above_two_plain_ones_is_not_marked_for_cutting_at_its_fold() -> None:
    rows = [
        piece(100, 300, 100, 200, "upright"),
        piece(100, 200, 220, 320),
        piece(200, 300, 220, 320),
    ]
    cuts = [mark for mark in sheet_marks(rows, 400, 420) if not mark.dash]
    assert all(y1 > 200 for x, y1, _, _ in upright(cuts) if x == 200)


@given(left=st.floats(0, 200), top=st.floats(0, 200), side=st.floats(30, 200))
def test_no_mark_leaves_the_sheet_or_touches_a_card(left: float, top: float, side: float) -> None:
    width, height = 2 * left + 3 * side, 2 * top + 2 * side
    for x1, y1, x2, y2 in lines(sheet_marks(grid(left, top, 3, 2, side), width, height)):
        assert 0 <= x1 <= x2 <= width + 1e-9
        assert 0 <= y1 <= y2 <= height + 1e-9
        off = max(left - x2, x1 - (width - left), top - y2, y1 - (height - top))
        assert off >= MM - 1e-9
        # Nearer than 5 mm to the edge only where the cards leave under 8 mm.
        if min(left, top) >= 8 * MM:
            assert min(max(x1, width - x2), max(y1, height - y2)) >= 0
            inset = min(x2, width - x1) if y1 == y2 else min(y2, height - y1)
            assert inset >= 5 * MM


def test_corner_guides_are_quarter_circles() -> None:
    guides = corner_guides(piece(10, 210, 20, 120), 9)
    assert len(guides.steps) == 8
    centres = [(19, 29), (201, 29), (201, 111), (19, 111)]
    for k, (cx, cy) in enumerate(centres):
        move, curve = guides.steps[2 * k], guides.steps[2 * k + 1]
        assert move[0] == "move"
        assert curve[0] == "curve"
        points = [move[1:], curve[1:3], curve[3:5], curve[5:7]]
        for t in (0.0, 0.25, 0.5, 0.8, 1.0):
            x, y = bezier([(p[0], p[1]) for p in points], t)
            assert math.hypot(x - cx, y - cy) == pytest.approx(9, rel=3e-4)
            # The arc bulges towards the corner.
            assert (x - cx) * (110 - cx) <= 1e-9
            assert (y - cy) * (70 - cy) <= 1e-9


def bezier(points: list[tuple[float, float]], t: float) -> tuple[float, float]:
    weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3]
    return (
        sum(w * x for w, (x, _) in zip(weights, points, strict=True)),
        sum(w * y for w, (_, y) in zip(weights, points, strict=True)),
    )
