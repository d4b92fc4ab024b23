"""What print rounds off: a hundredth of a mm between two strands, half of one in each."""

import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_diameter
from tagend.cards.practice.printed_sizes import (
    alike,
    step_up_to,
    strand_from,
    strand_up_to,
)


def mm(diameter: str) -> Fraction:
    return parse_diameter(diameter).mm


@pytest.mark.parametrize(("one", "other"), [("0.015 in", "0.38 mm"), ("0.38 mm", "0.389 mm")])
def test_less_than_a_hundredth_apart_is_alike(one: str, other: str) -> None:
    assert alike(mm(one), mm(other))
    assert alike(mm(other), mm(one))


def test_a_whole_hundredth_tells_two_strands_apart() -> None:
    assert not alike(mm("0.38 mm"), mm("0.39 mm"))


def test_a_strand_is_taken_for_the_one_that_it_is_printed_of() -> None:
    # 0.020 in are 0.508 mm, printed as 0.51; 0.013 in are 0.3302 mm, printed as 0.33.
    assert strand_up_to(mm("0.51 mm"), mm("0.020 in"))
    assert strand_from(mm("0.33 mm"), mm("0.013 in"))
    assert not strand_up_to(mm("0.52 mm"), mm("0.020 in"))
    assert not strand_from(mm("0.32 mm"), mm("0.013 in"))


def test_half_a_hundredth_is_still_print_and_more_is_not() -> None:
    half, more, size = Fraction("0.005"), Fraction("0.0051"), Fraction("0.5")
    assert strand_up_to(size + half, size)
    assert not strand_up_to(size + more, size)
    assert strand_from(size - half, size)
    assert not strand_from(size - more, size)


def test_a_step_may_be_off_by_what_both_its_strands_are() -> None:
    whole, more, step = Fraction("0.01"), Fraction("0.0101"), Fraction("0.0762")
    assert step_up_to(step + whole, step)
    assert not step_up_to(step + more, step)
