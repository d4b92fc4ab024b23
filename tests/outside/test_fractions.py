"""Our fractions against those of the standard library, exact for any numbers."""

import math
import operator
from collections.abc import Callable
from fractions import Fraction as Standard
from typing import Any

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

numbers = st.fractions() | st.integers().map(Standard)
wholes = st.integers()


def ours(value: Standard) -> Fraction:
    return Fraction(value.numerator, value.denominator)


def outcome(work: Callable[..., Any], *values: Any) -> Any:
    """Return what comes of it, a fraction as its two numbers, or which error."""
    try:
        found = work(*values)
    except ArithmeticError as error:
        return type(error)
    return found if isinstance(found, (bool, float, str)) else found.as_integer_ratio()


TWO = [
    operator.add,
    operator.sub,
    operator.mul,
    operator.truediv,
    operator.floordiv,
    operator.mod,
    operator.lt,
    operator.le,
    operator.eq,
    max,
]


@pytest.mark.parametrize("work", TWO)
@given(numbers, numbers, wholes)
def test_two_numbers(work: Callable[..., Any], one: Standard, other: Standard, whole: int) -> None:
    assert outcome(work, ours(one), ours(other)) == outcome(work, one, other)
    assert outcome(work, ours(one), whole) == outcome(work, one, whole)
    assert outcome(work, whole, ours(one)) == outcome(work, whole, one)


@pytest.mark.parametrize("work", [abs, operator.neg, round, math.floor, math.ceil, bool, str])
@given(numbers)
def test_one_number(work: Callable[..., Any], one: Standard) -> None:
    assert outcome(work, ours(one)) == outcome(work, one)


@given(st.fractions(-(2**70), 2**70, max_denominator=10**9))
def test_the_nearest_float(one: Standard) -> None:
    assert float(ours(one)) == float(one)


@given(st.floats(-1e9, 1e9) | st.decimals(-(10**9), 10**9))
def test_what_a_float_or_decimal_is(number: Any) -> None:
    assert Fraction(number).as_integer_ratio() == Standard(number).as_integer_ratio()


@given(st.from_regex(r"\d{1,12}(/[1-9]\d{0,9}|\.\d{1,12})?", fullmatch=True))
def test_what_is_written(text: str) -> None:
    assert Fraction(text).as_integer_ratio() == Standard(text).as_integer_ratio()


@given(st.fractions(max_denominator=10**12))
def test_both_are_equal_and_found_under_one_key(one: Standard) -> None:
    assert {one: "found"}[ours(one)] == "found"  # type: ignore[index]
