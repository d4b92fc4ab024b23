from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.variants.variant_lengths import levelled, scaled

lengths = st.lists(st.fractions(1, 2000, max_denominator=64), min_size=1, max_size=12)
totals = st.fractions(1, 9000, max_denominator=64)
marks = st.sampled_from([Fraction(1), Fraction(5), Fraction(127, 20), Fraction(127, 80)])


def fractions(*numbers: int) -> list[Fraction]:
    return list(map(Fraction, numbers))


def test_lengths_are_scaled_in_proportion() -> None:
    assert scaled(fractions(10, 20, 30), Fraction(90), Fraction(1)) == [15, 30, 45]


def test_what_rounding_leaves_goes_where_it_took_most() -> None:
    # A third of 100 each is 33 1/3, and half of one third is 16 2/3: 33 + 33 + 17 + 17 = 100.
    assert scaled(fractions(2, 2, 1, 1), Fraction(100), Fraction(1)) == [33, 33, 17, 17]


@given(lengths, totals, marks)
def test_scaled_lengths_lie_on_marks_and_make_the_total(
    before: list[Fraction], total: Fraction, mark: Fraction
) -> None:
    after = scaled(before, total, mark)
    assert all(length % mark == 0 for length in after)
    assert abs(sum(after) - total) <= mark / 2
    for old, new in zip(before, after, strict=True):
        assert abs(new - old * total / sum(before)) < mark


def test_the_longest_are_cut_down_to_one_length() -> None:
    # 8 and 10 stay, and 60 - 18 are three times 14.
    assert levelled(fractions(24, 14, 10, 8, 30), Fraction(60), Fraction(1)) == [14, 14, 10, 8, 14]


def test_nothing_to_cut_leaves_all_as_it_is() -> None:
    assert levelled(fractions(24, 14), Fraction(38), Fraction(5)) == [24, 14]


@given(lengths, st.fractions(0, 1, max_denominator=64), marks)
def test_levelled_lengths_make_the_total_and_never_grow_by_a_mark(
    before: list[Fraction], share: Fraction, mark: Fraction
) -> None:
    total = share * sum(before)
    after = levelled(before, total, mark)
    assert abs(sum(after) - total) <= mark / 2
    cut = [new for old, new in zip(before, after, strict=True) if new != old]
    assert all(length % mark == 0 for length in cut)
    assert all(max(cut) - length <= mark for length in cut)
    assert all(new < old + mark for old, new in zip(before, after, strict=True))
