from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.captions import Caption, placed_captions
from tagend.fonts import OURS
from tagend.layouts.paper.text import set_line

WIDE = set_line("132 in", OURS.medium, 10)

captions = st.lists(
    st.builds(
        Caption,
        line=st.integers(0, 9999).map(lambda number: set_line(str(number), OURS.medium, 10)),
        anchor=st.floats(0, 200),
        weight=st.floats(0, 100),
    ),
    max_size=20,
    unique_by=(lambda caption: caption.anchor, lambda caption: caption.weight),
).map(lambda found: sorted(found, key=lambda caption: caption.anchor))


def test_captions_with_room_stand_by_what_they_are_for() -> None:
    found = placed_captions([Caption(WIDE, 50, 1), Caption(WIDE, 150, 1)], 200)
    assert [(caption.x, caption.moved) for caption in found] == [(50, False), (150, False)]


def test_two_that_would_touch_move_apart() -> None:
    left, right = placed_captions([Caption(WIDE, 100, 1), Caption(WIDE, 104, 1)], 200)
    assert (left.moved, right.moved) == (True, True)
    assert left.x + WIDE.width / 2 < right.x - WIDE.width / 2
    assert (left.anchor, right.anchor) == (100, 104)


def test_a_caption_at_the_very_end_is_set_flush_and_needs_no_line() -> None:
    (caption,) = placed_captions([Caption(WIDE, 0, 1)], 200)
    assert (caption.x, caption.moved) == (WIDE.width / 2, False)


def test_where_not_all_fit_the_lightest_go() -> None:
    # At 10 pt, 60 pt hold two of these with a gap of 7 pt between them, but not three.
    assert 2 * WIDE.width + 7 <= 60 < 3 * WIDE.width
    found = placed_captions([Caption(WIDE, 10, 3), Caption(WIDE, 30, 1), Caption(WIDE, 50, 2)], 60)
    assert [caption.anchor for caption in found] == [10, 50]


def test_nothing_is_placed_where_nothing_fits() -> None:
    assert placed_captions([Caption(WIDE, 10, 1)], 5) == []
    assert placed_captions([], 5) == []


@given(captions, st.floats(10, 300))
def test_what_is_placed_is_apart_inside_and_heavier_than_what_is_not(
    wanted: list[Caption], width: float
) -> None:
    found = placed_captions(wanted, width)
    edges = [
        (caption.x - caption.line.width / 2, caption.x + caption.line.width / 2)
        for caption in found
    ]
    assert all(left >= -1e-6 and right <= width + 1e-6 for left, right in edges)
    assert all(right + 6.9 <= left for (_, right), (left, _) in pairwise(edges))  # 0.7 × 10 pt
    heaviest = sorted(wanted, key=lambda caption: -caption.weight)[: len(found)]
    assert [caption.anchor for caption in found] == sorted(caption.anchor for caption in heaviest)
