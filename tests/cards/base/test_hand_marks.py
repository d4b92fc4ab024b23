import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.hand_marks import hand_mark_mm, on_hand_marks
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.layouts.base.quantities import INCH_MM

UNITS: st.SearchStrategy[ShownUnit] = st.sampled_from(["in", "cm", "mm"])
LENGTHS = st.lists(st.fractions(1, 2000, max_denominator=64), min_size=1, max_size=12)


def inch(number: float) -> Fraction:
    return Fraction(number) * INCH_MM


def inches(*numbers: float) -> list[Fraction]:
    return list(map(inch, numbers))


@pytest.mark.parametrize(
    ("mm", "unit", "mark_mm"),
    [
        (12.5 * 25.4, "in", 25.4),
        (11.5 * 25.4, "in", 12.7),
        (310, "cm", 10),
        (290, "cm", 5),
        (310, "mm", 10),
    ],
)
def test_above_a_foot_marks_are_whole_and_below_it_halves(
    mm: float, unit: ShownUnit, mark_mm: float
) -> None:
    assert float(hand_mark_mm(Fraction(mm), unit)) == mark_mm


def test_what_is_over_goes_to_the_longest() -> None:
    # 46 1/4 + 18.6 + 7.4 = 72 1/4: 46 + 19 + 7, and 1/4 in is left.
    exact = [Fraction("46.25"), Fraction("18.6"), Fraction("7.4")]
    assert on_hand_marks([mm * INCH_MM for mm in exact], "in") == inches(46.25, 19, 7)


@given(LENGTHS, UNITS)
def test_the_sum_stays_and_all_but_one_lie_on_marks(
    before: list[Fraction], unit: ShownUnit
) -> None:
    after = on_hand_marks(before, unit)
    assert sum(after) == sum(before)
    marks = [hand_mark_mm(mm, unit) for mm in before]
    beside = [mm for mm, mark in zip(after, marks, strict=True) if mm % mark]
    assert len(beside) <= 1
    longest = before.index(max(before))
    for place, (old, new) in enumerate(zip(before, after, strict=True)):
        assert place == longest or abs(new - old) < marks[place]
    assert after[longest] - before[longest] < marks[longest] * len(before)


@given(LENGTHS, UNITS)
def test_what_lies_on_marks_stays(before: list[Fraction], unit: ShownUnit) -> None:
    after = on_hand_marks(before, unit)
    assert on_hand_marks(after, unit) == after or 0 in after
