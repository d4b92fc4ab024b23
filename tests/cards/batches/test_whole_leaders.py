"""Whole leaders against trying every way to cut them, piece by piece."""

from collections.abc import Sequence
from functools import cache
from itertools import product
from random import Random

import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.batches.batch import Order
from tagend.cards.batches.best_mix import best_mix
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.batches.whole_leaders import whole_leaders
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.layouts.base.quantities import INCH_MM
from tests.written import leader, recipe, section

SIZES = ("0.020 in", "0.015 in", "0.38 mm", "0.39 mm")  # a spool of 0.38 or 0.39 mm may be 0.015 in


def cut_as(*pieces: tuple[int, str]) -> Leader:
    """Return a leader whose sections are cut at so many inches."""
    sections = [section(f"{inches} in", size) for inches, size in pieces]
    return leader(recipe(*sections, lengths="cut"))


def rack(*spools: tuple[int, str]) -> Rack:
    return Rack(
        tuple(
            Spool(f"spool {place}", "nylon", parse_diameter(size), parse_line_length(f"{left} in"))
            for place, (left, size) in enumerate(spools)
        )
    )


def mix_of(leaders: Sequence[Leader], asked: tuple[int, ...], rack_: Rack) -> tuple[int, ...]:
    """Return the best mix, which must be known to be it."""
    mix = best_mix(list(map(Order, leaders, asked)), rack_)
    assert mix.at_most == sum(mix.numbers)
    return mix.numbers


def most_of(leaders: Sequence[Leader], rack_: Rack) -> list[int | None]:
    """Return how many of each the rack makes, which must be known."""
    found = whole_leaders(leaders, rack_)
    assert all(most is None or most.number == most.at_most for most in found)
    return [None if most is None else most.number for most in found]


def test_two_leaders_share_what_neither_has_alone() -> None:
    # 100 in make two of 40, or one of 40 and one of 55.
    both = [cut_as((40, "0.020 in")), cut_as((55, "0.020 in"))]
    spools = rack((100, "0.020 in"))
    assert most_of(both, spools) == [2, 1]
    assert mix_of(both, (5, 5), spools) == (1, 1)


def test_the_worst_served_comes_before_the_first() -> None:
    # 160 in make four of 40: of 6 and 6 asked, two each; of 6 and 2, three and one.
    both = [cut_as((40, "0.020 in")), cut_as((40, "0.020 in"))]
    spools = rack((160, "0.020 in"))
    assert mix_of(both, (6, 6), spools) == (2, 2)
    assert mix_of(both, (6, 2), spools) == (3, 1)
    assert mix_of(both, (3, 1), spools) == (3, 1)


def test_a_leader_that_takes_no_line_has_no_limit() -> None:
    ready = leader(recipe(section("9 ft", "0.020 in", bought=True)))
    spools = rack((10, "0.020 in"))
    assert most_of([ready], spools) == [None]
    assert mix_of([ready], (7,), spools) == (7,)


def test_line_that_the_rack_has_not_makes_no_leader() -> None:
    of = cut_as((40, "0.030 in"), (20, "0.020 in"))
    (most,) = whole_leaders([of], rack((500, "0.020 in")))
    assert most is not None
    assert most.number == 0
    assert [line.diameter_mm for line in most.lacking] == [Fraction(30, 1000) * INCH_MM]


def test_inches_and_centimetres_are_counted_to_the_mark() -> None:
    # 10 pieces of 20 in are 5.08 m to the mm, and a spool of 5.07 m makes 9.
    for left, number in (("5.08 m", 10), ("5.07 m", 9)):
        spool = Spool("a", "nylon", parse_diameter("0.020 in"), parse_line_length(left))
        assert most_of([cut_as((20, "0.020 in"))], Rack((spool,))) == [number]


def test_lengths_finer_than_any_tape_are_exact() -> None:
    odd = leader(recipe(section("30.12345 in", "0.020 in"), lengths="cut"))
    for left, number in (("60.2469 in", 2), ("60.2468 in", 1)):
        spool = Spool("a", "nylon", parse_diameter("0.020 in"), parse_line_length(left))
        assert most_of([odd], Rack((spool,))) == [number]


# A second solution, which cuts piece by piece in every way.


def cuts_all(leaders: Sequence[Leader], rack_: Rack, numbers: Sequence[int]) -> bool:
    pieces = sorted(
        (
            (piece.cut_mm, piece.section.diameter.mm)
            for whole, number in zip(leaders, numbers, strict=True)
            for piece in whole.pieces
            for _ in range(number)
        ),
        reverse=True,
    )

    @cache
    def cut(place: int, left: tuple[Fraction, ...]) -> bool:
        if place == len(pieces):
            return True
        mm, diameter = pieces[place]
        return any(
            abs(spool.diameter.mm - diameter) < Fraction(1, 100)
            and room >= mm
            and cut(place + 1, (*left[:at], room - mm, *left[at + 1 :]))
            for at, (spool, room) in enumerate(zip(rack_.spools, left, strict=True))
        )

    return cut(0, tuple(spool.left.mm for spool in rack_.spools))


def random_case(random: Random) -> tuple[list[Leader], Rack, tuple[int, ...]]:
    count = random.randint(1, 3)
    leaders = [
        cut_as(
            *((random.randint(20, 60), random.choice(SIZES)) for _ in range(random.randint(1, 3)))
        )
        for _ in range(count)
    ]
    spools = [(random.randint(30, 150), size) for size in SIZES if random.random() < 0.9]
    spools += [(random.randint(20, 120), random.choice(SIZES)) for _ in range(random.randint(0, 2))]
    asked = tuple(random.randint(1, 4) for _ in leaders)
    return leaders, rack(*spools), asked


def best_of_all(leaders: Sequence[Leader], rack_: Rack, asked: tuple[int, ...]) -> tuple[int, ...]:
    every = product(*(range(count + 1) for count in asked))
    made = [numbers for numbers in every if cuts_all(leaders, rack_, numbers)]
    return max(
        made,
        key=lambda numbers: (
            sum(numbers),
            min(Fraction(n, count) for n, count in zip(numbers, asked, strict=True)),
            numbers,
        ),
    )


@pytest.mark.parametrize("block", range(10))
def test_counts_and_mixes_are_the_best_of_all_in_200_cases(block: int) -> None:
    for seed in range(20 * block, 20 * (block + 1)):
        leaders, spools, asked = random_case(Random(seed))
        for place, most in enumerate(most_of(leaders, spools)):
            assert most is not None
            for number, made in ((most, True), (most + 1, False)):
                numbers = [number if at == place else 0 for at in range(len(leaders))]
                assert cuts_all(leaders, spools, numbers) is made, f"case {seed}"
        best = best_of_all(leaders, spools, asked)
        assert mix_of(leaders, asked, spools) == best, f"case {seed}"
        orders = list(map(Order, leaders, asked))
        for steps in (0, 100, 1000):
            mix = best_mix(orders, spools, steps)
            assert sum(mix.numbers) <= sum(best) <= mix.at_most, f"case {seed}"
            assert cuts_all(leaders, spools, mix.numbers), f"case {seed}"


@pytest.mark.parametrize("block", range(10))
def test_a_batch_is_cut_without_a_shortage_where_there_is_a_way(block: int) -> None:
    for seed in range(20 * block, 20 * (block + 1)):
        leaders, spools, asked = random_case(Random(seed))
        whole = cut_batch([Order(*pair) for pair in zip(leaders, asked, strict=True)], spools)
        assert (not whole.shortages) == cuts_all(leaders, spools, asked), f"case {seed}"
        assert whole.spare_mm == 0
        wanted = sum(n * one.cut_mm for n, one in zip(asked, leaders, strict=True))
        drawn, bought = (pull.mm for pull in whole.pulls), (lack.mm for lack in whole.shortages)
        assert sum(drawn) + sum(bought) == wanted
        for pull in whole.pulls:
            assert pull.left_mm is not None
            assert pull.left_mm >= 0
        for shortage in whole.shortages:
            assert 0 <= shortage.first.place < shortage.first.order.count


def test_what_is_to_buy_is_the_least() -> None:
    # Leader by leader, the emptier spool gives 25 and the other 40, and no 20 is left;
    # 40 from the one, and 25 + 20 from the other, is all. A second 20 is to buy.
    leaders = [cut_as((inches, "0.020 in")) for inches in (25, 40, 20)]
    spools = rack((40, "0.020 in"), (45, "0.020 in"))
    whole = cut_batch([Order(one, 1) for one in leaders], spools)
    assert whole.shortages == ()
    assert [[cut.piece.cut_mm / INCH_MM for cut in pull.cuts] for pull in whole.pulls] == (
        [[40], [25, 20]]
    )
    counts = zip(leaders, (1, 1, 2), strict=True)
    (shortage,) = cut_batch([Order(*pair) for pair in counts], spools).shortages
    assert shortage.mm == 20 * INCH_MM
    assert shortage.first.number == 2
