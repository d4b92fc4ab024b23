"""Searches over racks that are too much for trying everything: within steps, and true."""

from collections.abc import Callable

import pytest
from cfractions import Fraction

from tagend.cards.batches import COUNT_MOST, cutting, packing
from tagend.cards.batches import best_mix as mixes
from tagend.cards.batches import whole_leaders as wholes
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.budget import Budget
from tagend.cards.batches.spool_filling import Filling
from tagend.cards.practice.rack_file import Rack
from tests.shortages import alike, likely, linked

Case = Callable[[], tuple[list[Order], Rack]]

HARD: list[Case] = [
    lambda: likely(30, 12, 1),
    lambda: likely(30, COUNT_MOST, 2),
    lambda: alike(3, 100, 166),
    lambda: alike(30, COUNT_MOST, 166),
    lambda: alike(30, 100, 5, odd=True),
]


@pytest.fixture
def budgets(monkeypatch: pytest.MonkeyPatch) -> list[Budget]:
    """Return the budgets that searches begin with."""
    begun: list[Budget] = []

    class Noted(Budget):
        def __init__(self, steps: int) -> None:
            super().__init__(steps)
            begun.append(self)

    for module in (mixes, cutting, wholes):
        monkeypatch.setattr(module, "Budget", Noted)
    return begun


def bought(whole: Batch) -> Fraction:
    return sum((short.mm for short in whole.shortages), start=Fraction(0))


@pytest.mark.parametrize("case", HARD)
def test_what_is_to_buy_is_within_its_bound(case: Case, budgets: list[Budget]) -> None:
    orders, rack = case()
    whole = cutting.cut_batch(orders, rack)
    assert budgets[0].left > -cutting.STEPS / 2
    wanted = sum(order.count * order.leader.cut_mm for order in orders)
    assert sum(pull.mm for pull in whole.pulls) + bought(whole) == wanted
    assert all(pull.left_mm is not None and pull.left_mm >= 0 for pull in whole.pulls)
    # With fewer steps no more is proven, and both bounds hold for both.
    rough = cutting.cut_batch(orders, rack, 1000)
    assert bought(rough) - rough.spare_mm <= bought(whole)
    assert bought(whole) - whole.spare_mm <= bought(rough)
    # A hundredth of all line is more than ends of spools that are left.
    assert whole.spare_mm < wanted / 100


@pytest.mark.parametrize("case", HARD)
def test_a_mix_is_one_that_the_rack_makes_and_within_its_bound(
    case: Case, budgets: list[Budget]
) -> None:
    orders, rack = case()
    mix = mixes.best_mix(orders, rack)
    assert all(budget.left > -mixes.STEPS / 2 for budget in budgets)
    made = [
        Order(order.leader, number)
        for order, number in zip(orders, mix.numbers, strict=True)
        if number
    ]
    assert cutting.cut_batch(made, rack).shortages == ()
    assert sum(mix.numbers) <= mix.at_most <= sum(order.count for order in orders)
    # No case is further off than a fiftieth.
    assert sum(mix.numbers) > 0.98 * mix.at_most
    assert mixes.best_mix(orders, rack) == mix


@pytest.mark.parametrize("case", HARD)
def test_whole_leaders_are_made_and_within_their_bound(case: Case, budgets: list[Budget]) -> None:
    orders, rack = case()
    leaders = [order.leader for order in orders]
    found = wholes.whole_leaders(leaders, rack)
    assert budgets[0].left > -wholes.STEPS / 2
    for leader, most in list(zip(leaders, found, strict=True))[:3]:
        assert most is not None
        assert 0 < most.number <= most.at_most
        assert cutting.cut_batch([Order(leader, most.number)], rack).shortages == ()
        assert cutting.cut_batch([Order(leader, most.at_most + 1)], rack).shortages != ()


def test_hundreds_of_lines_that_print_alike_are_not_held_each_against_each(
    monkeypatch: pytest.MonkeyPatch, budgets: list[Budget]
) -> None:
    orders, rack = linked(30, 100)
    looked_at: list[object] = []
    among = packing._among

    def noted(pieces: Filling, sizes: frozenset[int]) -> Filling:
        looked_at.append(sizes)
        return among(pieces, sizes)

    monkeypatch.setattr(packing, "_among", noted)
    whole = cutting.cut_batch(orders, rack)
    assert len(looked_at) < 12_000  # of 360 lines and as many spools: each with its neighbours
    mix = mixes.best_mix(orders, rack)
    assert sum(mix.numbers) <= mix.at_most
    assert all(budget.left > -cutting.STEPS / 2 for budget in budgets)
    assert all(pull.left_mm is not None and pull.left_mm >= 0 for pull in whole.pulls)
