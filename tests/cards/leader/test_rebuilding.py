"""A used leader rebuilt: one by hand, what is refused, and the laws for all."""

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.leader.rebuilding import Rebuilt, rebuilt
from tagend.cards.leader.renewal import worn_mm
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.tieable import counts, seeds, tieable
from tests.written import PRACTICE, SIX, leader, recipe, section


def used(**left: str) -> Rebuilt:
    """Return the leader of six sections with so many inches left: `_5="4"`."""
    told = {int(place[1:]): Fraction(text) * INCH_MM for place, text in left.items()}
    return rebuilt(leader(SIX), told, PRACTICE)


def cut(of: Rebuilt) -> list[int]:
    return [each.piece.place for each in of.sections if not each.stays]


def test_what_the_new_knots_take_is_taken_of_what_stays() -> None:
    # Section 5 has 4 in left and would give 3 3/4 in to the new tippet: it is cut anew.
    # Section 4 then gives the thick side of a blood knot, 0.015 with 0.013 in:
    #   5 sqrt((2 x 0.3302 + pi x 0.7112)^2 + 0.381^2)    14.60 mm
    #   tag 1/16 in, hand 3 in                            77.7875
    #                                                     92.3875 = 3.637 in, up to 3 3/4 in
    # 10 - 3 3/4 = 6 1/4 in stay. 46 + 24 + 14 + 6 1/4 + 8 + 30 = 128 1/4 in of 132 in
    mended = used(_5="4", _6="0")
    assert cut(mended) == [5, 6]
    assert [each.finished_mm / INCH_MM for each in mended.sections] == [
        46, 24, 14, Fraction("6.25"), 8, 30,
    ]  # fmt: skip
    assert mended.finished_mm == Fraction("128.25") * INCH_MM
    assert mended.short_mm == Fraction("3.75") * INCH_MM
    assert mended.worth_it


def test_a_section_that_is_long_enough_yet_stays_with_its_neighbours() -> None:
    mended = used(_6="20")
    assert cut(mended) == []
    assert mended.short_mm == 10 * INCH_MM


def test_what_hangs_below_a_lost_section_is_lost_unless_it_is_told_of() -> None:
    assert cut(used(_4="0")) == [4, 5, 6]
    assert cut(used(_4="0", _5="8", _6="30")) == [4]  # 8 - 3 3/4 = 4 1/4 in
    assert cut(used(_4="0", _5="7", _6="30")) == [4, 5]  # 7 - 3 3/4 = 3 1/4 in
    assert cut(used(_5="0", _6="30")) == [5]


def test_a_leader_of_which_little_stays_is_better_tied_anew() -> None:
    # 41 in of section 1 stay of 127 in
    assert not used(_2="0").worth_it
    # 46 + 19 1/4 in stay of 127 1/4 in
    assert used(_3="0").worth_it


def test_a_bought_butt_is_kept() -> None:
    bought = recipe(section("3 ft", "0.021 in", bought=True), section("8 ft", "0.012 in"))
    assert rebuilt(leader(bought), {2: Fraction(0)}, PRACTICE).worth_it


def test_a_ring_keeps_both_its_neighbours_whole() -> None:
    ringed = recipe(
        section("40 in", "0.012 in", knot="ring joint"),
        section("20 in", "0.010 in", knot="ring joint"),
        section("20 in", "0.009 in"),
    )
    worked_out = leader(ringed)
    told = {2: Fraction(0), 3: 20 * INCH_MM}
    mended = rebuilt(worked_out, told, PRACTICE)
    assert cut(mended) == [2]
    assert mended.short_mm == 0


@pytest.mark.parametrize(
    ("left", "says"),
    [
        ({"_7": "2"}, "7: the leader has 6 sections; write a section from 1 to 6"),
        ({"_0": "2"}, "0: the leader has 6 sections"),
        ({"_5": "9"}, "5: 9 in is more than its recipe has; write 8 in or less"),
    ],
)
def test_what_cannot_be_left_is_refused(left: dict[str, str], says: str) -> None:
    with pytest.raises(Refused) as caught:
        used(**left)
    assert says in str(caught.value)


def test_a_hair_more_than_the_recipe_has_is_the_whole_section() -> None:
    (whole,) = (each for each in used(_5="8.05").sections if each.piece.place == 5)
    assert whole.finished_mm == 8 * INCH_MM


@given(seeds, counts, st.lists(st.none() | st.integers(0, 8), min_size=30, max_size=30))
def test_what_stays_what_is_cut_and_what_is_short_make_the_recipe(
    seed: int, sections: int | None, eighths: list[int | None]
) -> None:
    worked_out = tieable(seed, sections)
    told = {
        piece.place: piece.finished.low_mm * part / 8
        for piece, part in zip(worked_out.pieces, eighths, strict=False)
        if part is not None
    }
    mended = rebuilt(worked_out, told, PRACTICE)
    assert mended.finished_mm + mended.short_mm == worked_out.finished.low_mm
    for each in mended.sections:
        enough = each.left_mm - each.taken_mm >= worn_mm(each.piece, worked_out, PRACTICE)
        assert each.stays == enough
    again = {each.piece.place: each.finished_mm for each in mended.sections}
    assert cut(rebuilt(worked_out, again, PRACTICE)) == []
