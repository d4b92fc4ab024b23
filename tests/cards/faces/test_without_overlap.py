from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.captions import without_overlap

NEAR = 1e-6

Labels = tuple[list[float], list[float]]  # centres from left to right, and widths


@st.composite
def labels(draw: st.DrawFn) -> Labels:
    count = draw(st.integers(1, 12))
    places = st.floats(-50, 250)
    centres = sorted(draw(st.lists(places, min_size=count, max_size=count)))
    widths = draw(st.lists(st.floats(0.1, 40), min_size=count, max_size=count))
    return centres, widths


def test_labels_with_room_stay_where_they_want_to_be() -> None:
    assert without_overlap([10, 50, 90], [20, 20, 20], 100) == [10, 50, 90]


def test_two_that_collide_move_apart_by_half_each() -> None:
    # 20 wide and wanted at 48 and 52: they touch at 50, so they stand at 50 - 10 and 50 + 10
    assert without_overlap([48, 52], [20, 20], 100) == [40, 60]


def test_a_label_at_either_end_is_pushed_in() -> None:
    assert without_overlap([0, 100], [20, 30], 100) == [10, 85]  # 20 / 2 and 100 - 30 / 2


def test_labels_that_cannot_fit_find_no_places() -> None:
    assert without_overlap([10, 20], [60, 41], 100) is None
    assert without_overlap([10, 20], [60, 40], 100) == [
        30,
        80,
    ]  # full: 60 / 2 and 60 + 40 / 2


def test_no_labels_have_no_places() -> None:
    assert without_overlap([], [], 100) == []


@given(labels())
def test_no_label_overlaps_the_next_or_leaves_the_room(given_labels: Labels) -> None:
    centres, widths = given_labels
    room = max(200.0, sum(widths))
    places = without_overlap(centres, widths, room)
    assert places is not None
    edges = [(c - w / 2, c + w / 2) for c, w in zip(places, widths, strict=True)]
    assert edges[0][0] >= -NEAR
    assert edges[-1][1] <= room + NEAR
    assert all(left[1] <= right[0] + NEAR for left, right in pairwise(edges))


@given(labels())
def test_labels_that_already_fit_do_not_move(given_labels: Labels) -> None:
    centres, widths = given_labels
    places = without_overlap(centres, widths, sum(widths) + 200)
    assert places is not None
    again = without_overlap(places, widths, sum(widths) + 200)
    assert again == pytest.approx(places, abs=NEAR)


@pytest.mark.parametrize(
    ("centres", "widths", "room"),
    [
        ([5.0, 6.0, 7.0], [4.0, 2.0, 4.0], 12),
        ([1.0, 1.0, 11.0], [4.0, 4.0, 2.0], 12),
        ([10.0, 11.0, 12.0], [2.0, 4.0, 2.0], 12),
        ([0.0, 6.0, 6.0], [2.0, 2.0, 6.0], 12),
        ([-5.0, 20.0, 25.0], [3.0, 3.0, 3.0], 12),
    ],
)
def test_no_other_places_are_nearer_in_all(
    centres: list[float], widths: list[float], room: int
) -> None:
    """Hold the sum of squares against every arrangement on a grid of eighths."""
    places = without_overlap(centres, widths, room)
    assert places is not None

    def squares(at: tuple[float, ...]) -> float:
        return sum((place - wish) ** 2 for place, wish in zip(at, centres, strict=True))

    steps = [step / 8 for step in range(room * 8 + 1)]
    best = min(
        (
            squares((a, b, c))
            for a, b, c in product(steps, repeat=3)
            if a >= widths[0] / 2
            and b - a >= (widths[0] + widths[1]) / 2
            and c - b >= (widths[1] + widths[2]) / 2
            and c <= room - widths[2] / 2
        ),
    )
    assert squares(tuple(places)) <= best + NEAR
