from itertools import pairwise

import pytest

from tagend.cards.faces.ticks import boxes_width, tick_boxes
from tagend.cards.words.language import ENGLISH
from tagend.layouts.paper.face import Face, Path, TextRun
from tests.seen import Box, faults, points
from tests.told import scale

SCALE = scale(10 / 7.5)  # small type of 10 points


def boxes(count: int, width: float = 400) -> list[Box]:
    found = []
    for item in tick_boxes(count, ENGLISH, SCALE, width).items:
        if isinstance(item, Path):
            xs, ys = zip(*points(item), strict=True)
            found.append((min(xs), min(ys), max(xs), max(ys)))
    return found


def words(count: int) -> str:
    items = tick_boxes(count, ENGLISH, SCALE, 400).items
    return " ".join(item.text for item in items if isinstance(item, TextRun))


@pytest.mark.parametrize("count", [1, 4, 5, 12, 59, 60])
def test_there_is_a_box_for_each_piece(count: int) -> None:
    assert len(boxes(count)) == count
    assert words(count) == ""


@pytest.mark.parametrize(
    ("count", "found", "each"),
    [(61, 7, 10), (600, 60, 10), (601, 7, 100), (6_001, 7, 1000), (10_000, 10, 1000)],
)
def test_many_pieces_share_a_box(count: int, found: int, each: int) -> None:
    assert len(boxes(count)) == found  # rounded up, so that the last box is for the rest
    assert words(count) == f"a box for {each} pieces"


def test_boxes_stand_in_groups_of_five() -> None:
    lefts = [left for left, *_ in boxes(11)]
    gaps = [right - left for left, right in pairwise(lefts)]
    # 13.5 from box to box, and 4 more after every fifth
    assert gaps == pytest.approx([13.5, 13.5, 13.5, 13.5, 17.5, 13.5, 13.5, 13.5, 13.5, 17.5])


def test_a_box_has_the_number_of_what_it_is_for() -> None:
    items = tick_boxes(3, ENGLISH, SCALE, 400, (9, 41, 1042)).items
    assert [item.text for item in items if isinstance(item, TextRun)] == ["9", "41", "1042"]


def test_a_box_for_ten_has_the_first_number_and_the_last() -> None:
    items = tick_boxes(61, ENGLISH, SCALE, 400, range(101, 162)).items
    texts = [item.text for item in items if isinstance(item, TextRun)]
    assert texts == [*(f"{n}–{n + 9}" for n in range(101, 161, 10)), "161", "a box for 10 pieces"]


def test_all_boxes_stand_in_one_row_where_they_fit_and_else_in_whole_groups() -> None:
    wide = boxes_width(12, (), SCALE)
    assert len({top for _, top, *_ in boxes(12, wide)}) == 1
    assert [left for left, *_ in boxes(12, wide - 1)].count(0) == 2  # 10 and 2


@pytest.mark.parametrize("count", [1, 23, 60, 500])
@pytest.mark.parametrize("width", [70, 130, 400])
def test_boxes_stay_within_their_width_and_apart(count: int, width: float) -> None:
    block = tick_boxes(count, ENGLISH, SCALE, width)
    face = Face("boxes", max(width, 120), block.height + 3, block.items)
    assert faults(face, 0) == []
    found = boxes(count, width)
    assert max(right for _, _, right, _ in found) <= width
    corners = {(left, top) for left, top, *_ in found}
    assert len(corners) == len(found)
    assert max(bottom for *_, bottom in found) <= block.height
