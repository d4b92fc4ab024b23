"""Whole leaders against trying every way to cut them, piece by piece."""

from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from itertools import product
from random import Random

import pytest

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import best_batch
from tagend.cards.batches.kinds import kinds_of
from tagend.cards.batches.mix import best_mix
from tagend.cards.batches.whole import most_of, short_kinds
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


def test_two_leaders_share_what_neither_has_alone() -> None:
    # 100 in make two of 40, or one of 40 and one of 55.
    both = [cut_as((40, "0.020 in")), cut_as((55, "0.020 in"))]
    kinds = kinds_of(both, rack((100, "0.020 in")))
    assert [most_of(kinds, place, (0, 0)) for place in (0, 1)] == [2, 1]
    assert most_of(kinds, 1, (1, 0)) == 1
    assert best_mix(kinds, (5, 5)) == (1, 1)


def test_the_worst_served_comes_before_the_first() -> None:
    # 160 in make four of 40: of 6 and 6 asked, two each; of 6 and 2, three and one.
    both = [cut_as((40, "0.020 in")), cut_as((40, "0.020 in"))]
    kinds = kinds_of(both, rack((160, "0.020 in")))
    assert best_mix(kinds, (6, 6)) == (2, 2)
    assert best_mix(kinds, (6, 2)) == (3, 1)
    assert best_mix(kinds, (3, 1)) == (3, 1)


def test_a_leader_that_takes_no_line_has_no_limit() -> None:
    ready = leader(recipe(section("9 ft", "0.020 in", bought=True)))
    kinds = kinds_of([ready], rack((10, "0.020 in")))
    assert kinds == ()
    assert most_of(kinds, 0, (0,)) is None
    assert best_mix(kinds, (7,)) == (7,)


def test_line_that_the_rack_has_not_makes_no_leader() -> None:
    kinds = kinds_of([cut_as((40, "0.030 in"), (20, "0.020 in"))], rack((500, "0.020 in")))
    assert most_of(kinds, 0, (0,)) == 0
    (short,) = short_kinds(kinds, (1,))
    assert short.sizes[0].line.diameter_mm == Fraction(30, 1000) * INCH_MM


def test_inches_and_centimetres_are_counted_to_the_mark() -> None:
    # 10 pieces of 20 in are 5.08 m to the mm, and a spool of 5.07 m makes 9.
    for left, whole in (("5.08 m", 10), ("5.07 m", 9)):
        spool = Spool("a", "nylon", parse_diameter("0.020 in"), parse_line_length(left))
        kinds = kinds_of([cut_as((20, "0.020 in"))], Rack((spool,)))
        assert most_of(kinds, 0, (0,)) == whole


def test_lengths_finer_than_any_tape_are_rounded_against_the_spool() -> None:
    odd = leader(recipe(section("30.12345 in", "0.020 in"), lengths="cut"))
    exact = Spool("a", "nylon", parse_diameter("0.020 in"), parse_line_length("60.2469 in"))
    assert most_of(kinds_of([odd], Rack((exact,))), 0, (0,)) == 1


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
        kinds = kinds_of(leaders, spools)
        none = (0,) * len(leaders)
        for place in range(len(leaders)):
            most = most_of(kinds, place, none)
            assert most is not None
            for number, made in ((most, True), (most + 1, False)):
                numbers = (*none[:place], number, *none[place + 1 :])
                assert cuts_all(leaders, spools, numbers) is made, f"case {seed}"
        assert best_mix(kinds, asked) == best_of_all(leaders, spools, asked), f"case {seed}"


@pytest.mark.parametrize("block", range(10))
def test_a_batch_is_cut_without_a_shortage_where_there_is_a_way(block: int) -> None:
    for seed in range(20 * block, 20 * (block + 1)):
        leaders, spools, asked = random_case(Random(seed))
        whole = best_batch([Order(*pair) for pair in zip(leaders, asked, strict=True)], spools)
        assert (not whole.shortages) == cuts_all(leaders, spools, asked), f"case {seed}"
        wanted = sum(n * one.cut_mm for n, one in zip(asked, leaders, strict=True))
        drawn, bought = (pull.mm for pull in whole.pulls), (lack.mm for lack in whole.shortages)
        assert sum(drawn) + sum(bought) == wanted
        for pull in whole.pulls:
            assert pull.left_mm is not None
            assert pull.left_mm >= 0
        for shortage in whole.shortages:
            assert 1 <= shortage.first_leader <= sum(asked)


def test_what_is_to_buy_is_the_least() -> None:
    # Leader by leader, the emptier spool gives 25 and the other 40, and no 20 is left;
    # 40 from the one, and 25 + 20 from the other, is all. A second 20 is to buy.
    leaders = [cut_as((inches, "0.020 in")) for inches in (25, 40, 20)]
    spools = rack((40, "0.020 in"), (45, "0.020 in"))
    whole = best_batch([Order(one, 1) for one in leaders], spools)
    assert whole.shortages == ()
    assert [[cut.piece.cut_mm / INCH_MM for cut in pull.cuts] for pull in whole.pulls] == (
        [[40], [25, 20]]
    )
    counts = zip(leaders, (1, 1, 2), strict=True)
    (shortage,) = best_batch([Order(*pair) for pair in counts], spools).shortages
    assert shortage.mm == 20 * INCH_MM
    assert shortage.first_leader == 4
