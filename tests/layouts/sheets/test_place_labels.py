from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face
from tagend.layouts.sheets.imposition import DoesNotFit, place_labels
from tagend.layouts.stock.formats import LabelSheet
from tagend.layouts.stock.stock import label_sheet, shipped

NEAR = 0.03  # points; the slack with which things fit is 0.01 mm
ADDRESS = label_sheet("letter-3x10-66.7x25.4")


def labels(count: int) -> list[Face]:
    return [Face(f"label {k}", ADDRESS.width, ADDRESS.height, ()) for k in range(count)]


def test_labels_stand_exactly_where_the_stock_has_them() -> None:
    (sheet,) = place_labels(labels(5), ADDRESS)
    assert (sheet.width, sheet.height) == (612, 792)
    # 3/16 in = 13.5, 1/2 in = 36; pitches of 2 3/4 in = 198 and 1 in = 72
    assert [(placed.x, placed.y) for placed in sheet.placed] == [
        (13.5, 36),
        (211.5, 36),
        (409.5, 36),
        (13.5, 108),
        (211.5, 108),
    ]
    assert {placed.turn for placed in sheet.placed} == {0}


@pytest.mark.parametrize("stock", shipped().labels.values(), ids=lambda stock: stock.name)
def test_a_full_sheet_of_any_stock_stays_on_its_paper_without_overlaps(stock: LabelSheet) -> None:
    faces = [Face("label", stock.width, stock.height, ())] * (stock.columns * stock.rows)
    (sheet,) = place_labels(faces, stock)
    for placed in sheet.placed:
        assert -NEAR <= placed.x <= sheet.width - stock.width + NEAR
        assert -NEAR <= placed.y <= sheet.height - stock.height + NEAR
    for one, other in combinations(sheet.placed, 2):
        beside = abs(one.x - other.x) >= stock.width - NEAR
        assert beside or abs(one.y - other.y) >= stock.height - NEAR


def test_a_used_sheet_is_begun_at_its_first_free_label() -> None:
    first, second = place_labels(labels(4), ADDRESS, start=29)
    assert [(placed.x, placed.y) for placed in first.placed] == [
        ADDRESS.places[28],
        ADDRESS.places[29],
    ]
    assert [(placed.x, placed.y) for placed in second.placed] == list(ADDRESS.places[:2])


def test_spoiled_labels_are_passed_over_on_the_first_sheet_only() -> None:
    first, second = place_labels(labels(31), ADDRESS, start=27, skip={28, 3})
    assert [(placed.x, placed.y) for placed in first.placed] == [
        ADDRESS.places[26],
        ADDRESS.places[28],
        ADDRESS.places[29],
    ]
    assert [(placed.x, placed.y) for placed in second.placed] == list(ADDRESS.places[:28])


def test_a_first_sheet_without_a_free_label_is_not_printed() -> None:
    (sheet,) = place_labels(labels(1), ADDRESS, start=30, skip={30})
    assert (sheet.placed[0].x, sheet.placed[0].y) == ADDRESS.places[0]


def test_a_roll_takes_a_page_a_label() -> None:
    roll = label_sheet("roll-51x25")
    sheets = place_labels([Face("label", 144, 72, ())] * 3, roll)
    assert [(sheet.width, sheet.height, len(sheet.placed)) for sheet in sheets] == [
        (144, 72, 1)
    ] * 3


def test_no_labels_make_no_sheet() -> None:
    assert place_labels([], ADDRESS, start=4) == ()


@pytest.mark.parametrize(("start", "skip"), [(0, ()), (31, ()), (1, (31,)), (1, (0,))])
def test_a_label_the_sheet_does_not_have_is_refused(start: int, skip: tuple[int, ...]) -> None:
    with pytest.raises(Refused, match=r"has no label \d+; write 1 to 30"):
        place_labels(labels(1), ADDRESS, start, skip)


def test_a_face_larger_than_its_label_is_refused_with_stock_that_would_do() -> None:
    with pytest.raises(DoesNotFit) as caught:
        place_labels([Face("label", 3.9 * 72, 1.9 * 72, ())], ADDRESS)
    assert str(caught.value) == (
        "a label of 99.06 × 48.26 mm does not fit letter-3x10-66.7x25.4, which has room for "
        "66.67 × 25.4 mm; use letter-2x5-101.6x50.8 or letter-2x3-101.6x84.7 or "
        "letter-1x3-127x76.2-card"
    )
    for name in caught.value.would_do:
        place_labels([Face("label", 3.9 * 72, 1.9 * 72, ())], label_sheet(name))


@given(count=st.integers(0, 95), start=st.integers(1, 30), skip=st.sets(st.integers(1, 30)))
def test_every_label_is_printed_once_and_in_order(count: int, start: int, skip: set[int]) -> None:
    sheets = place_labels(labels(count), ADDRESS, start, skip)
    assert [p.face.name for sheet in sheets for p in sheet.placed] == [
        face.name for face in labels(count)
    ]
    assert all(sheet.placed for sheet in sheets)
    taken = {ADDRESS.places.index((p.x, p.y)) + 1 for s in sheets[:1] for p in s.placed}
    free = set(range(start, 31)) - skip
    if free:
        assert taken == set(sorted(free)[:count])
