"""What a new piece costs the one above it: two leaders by hand, and the laws for all."""

from collections import Counter

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.renewal import carried, renewal, renewals, worn_mm
from tagend.layouts.base.quantities import INCH_MM
from tests.tieable import counts, seeds, tieable
from tests.written import PRACTICE, SIX, leader, practice, recipe, section

METRIC = recipe(
    section("30 cm", "0.30 mm"),
    section("20 cm", "0.22 mm"),
    section("50 cm", "0.15 mm"),
)


def test_a_new_tippet_takes_the_upper_side_of_its_joint_in_inches() -> None:
    # Triple surgeon's, 0.013 in (0.3302 mm) with 0.010 in (0.254 mm):
    #   3 sqrt((2 x 0.254 + pi x 0.5842)^2 + 0.3302^2)    7.10 mm
    #   27 x 0.3302                                       8.92
    #   tag 1/16 in, hand 3 in                           77.7875
    #                                                    93.8075 = 3.693 in, up to 3 3/4 in
    # Half of 8 in, and 4 in, may go: 3 3/4 in once; 8 - 3 3/4 = 4 1/4 in
    (tippet,) = renewals(leader(SIX), PRACTICE)
    assert (tippet.piece.place, tippet.above.place) == (6, 5)
    assert tippet.cost_mm == Fraction("3.75") * INCH_MM
    assert tippet.number == 1
    assert tippet.rest_mm == Fraction("4.25") * INCH_MM


def test_a_new_tippet_takes_the_upper_side_of_its_joint_in_centimetres() -> None:
    # Blood, 0.22 with 0.15 mm: 7 sqrt((2 x 0.15 + pi x 0.37)^2 + 0.22^2)    10.36 mm
    #   tag 1/16 in, hand 2 in                                               52.3875
    #                                                                        62.7475, up to 65 mm
    # Of 200 mm 4 in, 101.6 mm, must stay: 65 once; 200 - 65 = 135 mm
    (tippet,) = renewals(leader(METRIC), PRACTICE)
    assert tippet.cost_mm == Fraction(65)
    assert tippet.number == 1
    assert tippet.rest_mm == Fraction(135)


@pytest.mark.parametrize("knot", ["ring joint", "swivel", "loop to loop"])
def test_a_ring_and_a_loop_keep_the_side_above(knot: str) -> None:
    ringed = recipe(section("20 in", "0.012 in", knot=knot), section("20 in", "0.009 in"))
    (tippet,) = renewals(leader(ringed), PRACTICE)
    assert tippet.number is None
    assert not tippet.cost_mm
    assert [(each.piece.place, each.count) for each in carried(leader(ringed), 2, 9, PRACTICE)] == [
        (2, 9)
    ]


def test_a_dropper_is_left_long_again() -> None:
    def cost(dropper: str | None) -> Fraction:
        upper = section("40 in", "0.009 in", dropper=dropper)
        return renewal(leader(recipe(upper, section("20 in", "0.008 in"))), 2, PRACTICE).cost_mm

    assert cost("6 in") == cost(None) + 6 * INCH_MM


def test_a_bite_guard_and_the_tippet_above_it_are_two_cases() -> None:
    guarded = recipe(
        section("40 in", "0.024 in"),
        section("20 in", "0.020 in"),
        section("12 in", "0.030 in", part="bite guard"),
    )
    tippet, guard = renewals(leader(guarded), PRACTICE)
    assert (tippet.piece.part, guard.piece.part) == ("tippet", "bite guard")
    assert guard.above == tippet.piece


def test_a_leader_of_one_section_has_nothing_above_its_tippet() -> None:
    assert renewals(leader(recipe(section("9 ft", "0.010 in"))), PRACTICE) == ()


def test_a_class_tippet_is_spent_at_the_published_least() -> None:
    def number(*, record: bool, shop: str = 'units = "in"') -> int | None:
        guarded = recipe(
            section("40 in", "0.024 in"),
            section("20 in", "0.020 in"),
            section("12 in", "0.030 in", part="bite guard"),
            record_lengths=record,
        )
        own = practice(shop)
        return renewals(leader(guarded, own), own)[-1].number

    # IGFA International Angling Rules, fly: at least 15 in inside the knots. The albright
    # takes more than 6 in of 20 in.
    assert number(record=False) == 1
    assert number(record=True) == 0
    assert number(record=True, shop='[rules."class tippet"]\nseverity = "off"\n') == 1


@given(seeds, counts)
def test_the_renewals_and_the_rest_make_the_section(seed: int, sections: int | None) -> None:
    worked_out = tieable(seed, sections)
    for each in renewals(worked_out, PRACTICE):
        whole = each.above.finished.low_mm
        if each.number is None:
            assert not each.cost_mm
            assert each.rest_mm == whole
            continue
        assert each.number * each.cost_mm + each.rest_mm == whole
        least = worn_mm(each.above, worked_out, PRACTICE)
        assert each.rest_mm >= least > each.rest_mm - each.cost_mm


@given(seeds, counts, st.integers(1, 40))
def test_what_is_carried_is_what_one_renewal_after_the_other_uses(
    seed: int, sections: int | None, count: int
) -> None:
    worked_out = tieable(seed, sections)
    for each in renewals(worked_out, PRACTICE):
        place = each.piece.place
        told = {one.piece.place: one.count for one in carried(worked_out, place, count, PRACTICE)}
        assert told == _used(worked_out, place, count)


def _used(worked_out: Leader, place: int, count: int) -> Counter[int]:
    """Return the pieces of each section that are tied, one renewal after the other."""
    pieces = worked_out.pieces
    left = {piece.place: piece.finished.low_mm for piece in pieces}
    used = Counter[int]()
    for _ in range(count):
        used.update(range(place, len(pieces) + 1))
        for above in range(place - 1, 0, -1):
            left[above] -= renewal(worked_out, above + 1, PRACTICE).cost_mm
            if left[above] >= worn_mm(pieces[above - 1], worked_out, PRACTICE):
                break
            used[above] += 1
            left[above] = pieces[above - 1].finished.low_mm
    return used
