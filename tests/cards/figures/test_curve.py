from itertools import pairwise
from math import dist, hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.figures.curve import CLOSE, STEP, beside, coil, pitch, rounded, smooth, wound

place = st.tuples(*[st.integers(-8, 8).map(float)] * 3)
places = st.lists(place, min_size=3, max_size=8, unique=True)


@given(places)
def test_curve_passes_through_its_places_in_order(places: list[tuple[float, float, float]]) -> None:
    points = smooth(places)
    at = [points.index(place) for place in places]
    assert at == sorted(at)
    assert (points[0], points[-1]) == (places[0], places[-1])


def test_curve_through_places_in_line_is_straight_and_closely_spaced() -> None:
    points = smooth([(0, 0, 0), (1, 0, 0), (5, 0, 0)])
    assert all(y == 0 and z == 0 for _, y, z in points)
    assert all(0 < b[0] - a[0] < 2 * STEP for a, b in pairwise(points))


def test_curve_through_a_coil_is_a_helix() -> None:
    points = smooth(coil(0, 6, 3, 0, 2.0, 2.0))
    inside = [hypot(y, z) for x, y, z in points if 0.5 < x < 5.5]
    assert min(inside) == pytest.approx(2.0, abs=0.005)
    assert max(inside) == pytest.approx(2.0, abs=0.005)
    # 3 turns of a helix of radius 2 and pitch 2: 3 * hypot(2 * pi * 2, 2) = 38.2
    assert sum(dist(a, b) for a, b in pairwise(points)) == pytest.approx(
        3 * hypot(4 * pi, 2), rel=0.01
    )


def test_coil_starts_at_its_angle_and_goes_front_first_where_it_is_right_handed() -> None:
    first, second, *_ = coil(0, 4, 2, 0, 1.0, 3.0)
    assert first == (0.0, 1.0, 0.0)  # 0 degrees: on top
    assert second[2] > 0
    *_, last = coil(0, 4, -0.25, 90, 1.0, 3.0)
    assert last == pytest.approx((4.0, 1.0, 0.0))  # from the front back to the top


def test_corner_is_cut_no_further_than_its_reach() -> None:
    places = rounded([(0, 0, 0), (10, 0, 0), (10, 10, 0)], 2.0)
    assert (8.0, 0.0, 0.0) in places
    assert (10.0, 2.0, 0.0) in places
    assert (9.5, 0.5, 0.0) in places  # the middle of a parabola is half way to the corner's chord
    assert all(x <= 10 and y >= 0 for x, y, _ in places)


def test_short_line_keeps_its_corners_apart() -> None:
    places = rounded([(0, 0, 0), (5, 0, 0), (5, 1, 0), (9, 1, 0)], 3.0)
    ys = [y for x, y, _ in places if x == 5.0]
    assert ys == sorted(ys)


def test_guides_at_a_coil_are_left_out() -> None:
    helix = coil(2, 4, 1, 0, 1, 1)
    places = wound([(0, 0, 0), (1, 1, 0), (2, 9, 9)], helix, [(4, 9, 9), (5, 1, 0), (6, 0, 0)], 0.1)
    assert (2, 9, 9) not in places
    assert (4, 9, 9) not in places
    assert helix[1] in places


def test_line_beside_another_keeps_its_distance_round_a_corner() -> None:
    assert beside([(0, 0, 0), (4, 0, 1), (4, 4, 2)], 1.0) == [(0, 1, 0), (3, 1, 1), (3, 4, 2)]


def test_turns_share_their_room_until_they_touch() -> None:
    assert pitch(2, 12.0, 1.9) == 1.9
    assert pitch(10, 12.0, 1.9) == 1.2
    assert pitch(60, 12.0, 1.9) == CLOSE >= 1
