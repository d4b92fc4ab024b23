from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.hand_marks import FOOT_MM, mark_mm, to_hand_mark
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.layouts.base.quantities import INCH_MM


@pytest.mark.parametrize(
    ("inches", "marked"),
    [("38.6", "39"), ("12.4", "12"), ("11.8", "12"), ("11.6", "11.5"), ("6.25", "6.5")],
)
def test_inches_are_whole_above_a_foot_and_halved_below(inches: str, marked: str) -> None:
    assert to_hand_mark(Fraction(inches) * INCH_MM, "in") == Fraction(marked) * INCH_MM


def test_centimetres_are_whole_above_thirty_and_halved_below() -> None:
    assert to_hand_mark(Fraction("438.6"), "cm") == 440
    assert to_hand_mark(Fraction("283.6"), "cm") == 285


@given(st.fractions(0, 5000), st.sampled_from(["in", "cm", "mm"]))
def test_a_mark_is_near_and_stays_where_it_is(mm: Fraction, unit: ShownUnit) -> None:
    mark = to_hand_mark(mm, unit)
    assert abs(mark - mm) <= mark_mm(mm, unit) / 2
    assert to_hand_mark(mark, unit) == mark
    if mark > FOOT_MM[unit]:
        assert mark % mark_mm(mark, unit) == 0
