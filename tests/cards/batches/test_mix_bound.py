from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.batches.budget import Budget
from tagend.cards.batches.mix_bound import relaxed


def best(takes: list[list[int]], left: list[int], more: list[int]) -> int:
    """Return the most leaders whose lengths together are no more than is left."""
    return max(
        sum(mix)
        for mix in product(*(range(count + 1) for count in more))
        if all(
            sum(take * number for take, number in zip(row, mix, strict=True)) <= rest
            for row, rest in zip(takes, left, strict=True)
        )
    )


def bound(takes: list[list[int]], left: list[int], more: list[int]) -> int:
    return relaxed(takes, left, more, Budget(10**6))[1]


def test_one_kind_of_line_goes_to_those_that_take_least() -> None:
    # 100 for pieces of 10 (three at the most) and of 30: 3 and 2.33.
    assert bound([[10, 30]], [100], [3, 9]) == 5


def test_two_kinds_that_pull_apart_meet_between() -> None:
    # 2x + y <= 12 and x + 2y <= 12 meet at x = y = 4; either alone would allow 12.
    assert bound([[2, 1], [1, 2]], [12, 12], [99, 99]) == 8


def test_what_takes_no_line_is_bound_by_what_is_asked() -> None:
    assert bound([], [], [7, 2]) == 9
    assert bound([[0, 5]], [0], [7, 2]) == 7


@given(st.data())
def test_no_mix_is_above_the_bound(data: st.DataObject) -> None:
    leaders, kinds = data.draw(st.integers(1, 3)), data.draw(st.integers(1, 3))
    lengths = st.lists(st.integers(0, 2000), min_size=leaders, max_size=leaders)
    takes = data.draw(st.lists(lengths, min_size=kinds, max_size=kinds))
    left = data.draw(st.lists(st.integers(0, 9000), min_size=kinds, max_size=kinds))
    more = data.draw(st.lists(st.integers(0, 6), min_size=leaders, max_size=leaders))
    found = bound(takes, left, more)
    assert best(takes, left, more) <= found <= sum(more)


def test_a_bound_costs_steps_though_nothing_is_scarce() -> None:
    # Thousands are asked for in a search, of which most are as plain as this one.
    budget = Budget(1000)
    relaxed([[1, 1]], [10], [1, 1], budget)
    assert budget.left <= 1000 - 16
