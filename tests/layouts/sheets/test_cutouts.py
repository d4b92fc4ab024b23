from itertools import product
from typing import Literal, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.paper.face import Face, Turn
from tagend.layouts.sheets.cutouts import Axis, Card, cutouts, mirrored, turned, turning_axis
from tagend.layouts.sheets.sheet import Placed

FRONT, BACK = Face("front", 240, 150, ()), Face("back", 240, 150, ())
TURNS: tuple[Turn, ...] = get_args(Turn)
AXES: tuple[Axis, ...] = get_args(Axis)


def test_a_card_without_a_back_is_cut_out_upright_or_turned() -> None:
    upright, quarter = cutouts(Card(FRONT), "fold")
    assert upright.placed == (Placed(FRONT, 0, 0),)
    assert (quarter.width, quarter.height) == (150, 240)
    assert quarter.placed == (Placed(FRONT, 0, 0, 90),)
    assert upright.fold is quarter.fold is None


def test_a_folded_card_has_its_back_at_the_left_or_upside_down_above() -> None:
    book, _, tent, _ = cutouts(Card(FRONT, BACK), "fold")
    assert (book.width, book.height, book.fold) == (480, 150, "upright")
    assert book.placed == (Placed(FRONT, 240, 0), Placed(BACK, 0, 0))
    assert (tent.width, tent.height, tent.fold) == (240, 300, "level")
    assert tent.placed == (Placed(FRONT, 0, 150), Placed(BACK, 0, 0, 180))


def test_a_folded_card_turned_has_its_right_side_on_top() -> None:
    _, book, _, tent = cutouts(Card(FRONT, BACK), "fold")
    assert (book.width, book.height, book.fold) == (150, 480, "level")
    assert book.placed == (Placed(FRONT, 0, 0, 90), Placed(BACK, 0, 240, 90))
    assert tent.fold == "upright"
    assert tent.placed == (Placed(FRONT, 150, 0, 90), Placed(BACK, 0, 0, 270))


def test_a_card_for_duplex_keeps_its_back_for_the_other_side() -> None:
    cutout = cutouts(Card(FRONT, BACK), "long-edge")[0]
    assert cutout.back == BACK
    assert cutout.placed == (Placed(FRONT, 0, 0),)


def test_four_quarter_turns_change_nothing() -> None:
    for cutout in cutouts(Card(FRONT, BACK), "fold"):
        assert turned(turned(turned(turned(cutout)))) == cutout


def test_a_back_of_another_size_is_refused() -> None:
    with pytest.raises(ValueError, match="the back of 'front' is of another size"):
        Card(FRONT, Face("back", 150, 240, ()))


@given(
    x=st.floats(0, 400),
    y=st.floats(0, 400),
    turn=st.sampled_from(TURNS),
    axis=st.sampled_from(AXES),
)
def test_mirroring_twice_changes_nothing(x: float, y: float, turn: Turn, axis: Axis) -> None:
    once = mirrored(Placed(FRONT, x, y, turn), 700, 800, axis)
    twice = mirrored(once, 700, 800, axis)
    assert (twice.x, twice.y) == pytest.approx((x, y), abs=1e-9)
    assert twice.turn == turn


@pytest.mark.parametrize(
    ("width", "height", "edge", "axis"),
    # Common practice in print: a portrait page bound at its long edge turns like a book.
    [
        (600, 800, "long-edge", "upright"),
        (600, 800, "short-edge", "level"),
        (800, 600, "long-edge", "level"),
        (800, 600, "short-edge", "upright"),
    ],
)
def test_a_sheet_turns_about_the_edge_it_is_bound_at(
    width: float, height: float, edge: Literal["long-edge", "short-edge"], axis: Axis
) -> None:
    assert turning_axis(width, height, edge) == axis


def test_every_mirrored_box_is_on_the_sheet() -> None:
    for turn, axis in product(TURNS, AXES):
        placed = mirrored(Placed(FRONT, 10, 20, turn), 700, 800, axis)
        width, height = placed.size
        assert placed.x >= 0
        assert placed.y >= 0
        assert placed.x + width <= 700
        assert placed.y + height <= 800
