from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.label_choice import Label, placed
from tagend.layouts.paper.text import set_line

WIDE = set_line("132 in", "medium", 10)

labels = st.lists(
    st.builds(
        Label,
        line=st.integers(0, 9999).map(lambda number: set_line(str(number), "medium", 10)),
        anchor=st.floats(0, 200),
        weight=st.floats(0, 100),
    ),
    max_size=20,
    unique_by=(lambda label: label.anchor, lambda label: label.weight),
).map(lambda found: sorted(found, key=lambda label: label.anchor))


def test_labels_with_room_stand_over_what_they_label() -> None:
    found = placed([Label(WIDE, 50, 1), Label(WIDE, 150, 1)], 200)
    assert [(label.x, label.moved) for label in found] == [(50, False), (150, False)]


def test_two_that_would_touch_move_apart() -> None:
    left, right = placed([Label(WIDE, 100, 1), Label(WIDE, 104, 1)], 200)
    assert (left.moved, right.moved) == (True, True)
    assert left.x + WIDE.width / 2 < right.x - WIDE.width / 2
    assert (left.anchor, right.anchor) == (100, 104)


def test_a_label_at_the_very_end_is_set_flush_and_needs_no_line() -> None:
    (label,) = placed([Label(WIDE, 0, 1)], 200)
    assert (label.x, label.moved) == (WIDE.width / 2, False)


def test_where_not_all_fit_the_lightest_go() -> None:
    # At 10 pt, 60 pt hold two of these with a gap of 7 pt between them, but not three.
    assert 2 * WIDE.width + 7 <= 60 < 3 * WIDE.width
    found = placed([Label(WIDE, 10, 3), Label(WIDE, 30, 1), Label(WIDE, 50, 2)], 60)
    assert [label.anchor for label in found] == [10, 50]


def test_nothing_is_placed_where_nothing_fits() -> None:
    assert placed([Label(WIDE, 10, 1)], 5) == []
    assert placed([], 5) == []


@given(labels, st.floats(10, 300))
def test_what_is_placed_is_apart_inside_and_heavier_than_what_is_not(
    wanted: list[Label], width: float
) -> None:
    found = placed(wanted, width)
    edges = [(label.x - label.line.width / 2, label.x + label.line.width / 2) for label in found]
    assert all(left >= -1e-6 and right <= width + 1e-6 for left, right in edges)
    assert all(right + 6.9 <= left for (_, right), (left, _) in pairwise(edges))  # 0.7 × 10 pt
    heaviest = sorted(wanted, key=lambda label: -label.weight)[: len(found)]
    assert [label.anchor for label in found] == sorted(label.anchor for label in heaviest)
