import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.hand_marks import hand_mark_mm
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.variants.variant_lengths import levelled, scaled
from tests.cards.base.test_hand_marks import UNITS, inch, inches

lengths = st.lists(st.fractions(1, 2000, max_denominator=64), min_size=1, max_size=12)
totals = st.fractions(1, 9000, max_denominator=64)


@pytest.mark.parametrize(
    ("before", "total", "after"),
    [
        ((20, 40, 60), 240, (40, 80, 120)),
        # A third of 100 each is 33 1/3, and half of one third is 16 2/3: 33 + 33 + 17 + 17 = 100.
        ((2, 2, 1, 1), 100, (33, 33, 17, 17)),
    ],
)
def test_lengths_are_scaled_in_proportion(
    before: tuple[int, ...], total: int, after: tuple[int, ...]
) -> None:
    assert scaled(inches(*before), inch(total), "in") == inches(*after)


@given(lengths, totals, UNITS)
def test_scaled_lengths_make_the_total_in_proportion(
    before: list[Fraction], total: Fraction, unit: ShownUnit
) -> None:
    after = scaled(before, total, unit)
    assert sum(after) == total
    longest = before.index(max(before))
    for place, (old, new) in enumerate(zip(before, after, strict=True)):
        mark = hand_mark_mm(total, unit)
        assert place == longest or abs(new - old * total / sum(before)) < mark


def test_the_longest_are_cut_down_to_one_length() -> None:
    # 8 and 10 stay, and 60 - 18 are three times 14.
    before = inches(24, 14, 10, 8, 30)
    assert levelled(before, inch(60), "in") == inches(14, 14, 10, 8, 14)


def test_nothing_to_cut_leaves_all_as_it_is() -> None:
    assert levelled(inches(24, 14), inch(38), "in") == inches(24, 14)


@given(lengths, st.fractions(0, 1, max_denominator=64), UNITS)
def test_levelled_lengths_make_the_total_and_never_grow_by_a_mark(
    before: list[Fraction], share: Fraction, unit: ShownUnit
) -> None:
    total = share * sum(before)
    after = levelled(before, total, unit)
    assert sum(after) == total
    mark = hand_mark_mm(Fraction(2000), unit)
    assert all(new < old + mark for old, new in zip(before, after, strict=True))
