import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import Diameter, parse_diameter, parse_length
from tagend.cards.leader.allowance import (
    BARE,
    Allowance,
    end_allowance,
    helix_mm,
    joint_allowances,
    wraps_mm,
)
from tagend.cards.leader.joints import End, Joint, end_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.practice import Practice
from tests.strategies import diameters
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section

INCH = Fraction("25.4")
TAG = Fraction("1.5875")  # 1/16 in


def joint(upper: str, lower: str, knot: str, by: Practice = PRACTICE) -> Joint:
    """Return the joint of two nylon strands."""
    written = recipe(section("30 in", upper, knot=knot), section("20 in", lower))
    return leader(written, by).joints[0]


def shares(allowance: Allowance) -> dict[str, Fraction]:
    return {share.into: share.mm for share in allowance.shares}


def end(knot: str | None, strand: str, loop: str = "3/4 in") -> End:
    meeting = Meeting.alone(PRACTICE.materials.find("nylon"), mm(strand))
    found = PRACTICE.knots.find(knot) if knot else None
    return end_of(found, meeting, parse_length(loop).mm, PRACTICE)


def mm(diameter: str) -> Fraction:
    return parse_diameter(diameter).mm


def test_a_blood_knot_of_equal_strands_takes_the_same_on_both_sides() -> None:
    above, below = joint_allowances(joint("0.013 in", "0.013 in", "blood"), PRACTICE)
    # 0.3302 mm, 5 turns round two strands: 5 sqrt((2 x 0.3302 + pi x 0.6604)^2 + 0.3302^2)
    # = 5 x 2.75497 = 13.775, up to the hundredth 13.78; tag 1/16 in; held by 3 in.
    assert shares(above) == {"wraps": Fraction("13.78"), "tag": TAG, "hand": 3 * INCH}
    assert above.mm == Fraction("13.78") + TAG + 3 * INCH
    assert below == above


def test_each_side_of_a_blood_knot_goes_by_its_own_strand() -> None:
    above, below = joint_allowances(joint("0.017 in", "0.013 in", "blood"), PRACTICE)
    # 0.4318 round 0.3302 mm, 5 turns: 5 sqrt((0.6604 + pi x 0.762)^2 + 0.4318^2) = 15.421
    # 0.3302 round 0.4318 mm, 5 + 2 turns for a step of 1.31 times:
    # 7 sqrt((0.8636 + pi x 0.762)^2 + 0.3302^2) = 22.919
    # The upper takes as much as the lower, 22.92 - 15.43 more, so that the knot is in the middle.
    assert shares(above) == {
        "wraps": Fraction("15.43"),
        "tag": TAG,
        "hand": 3 * INCH,
        "lap": Fraction("7.49"),
    }
    assert shares(below) == {"wraps": Fraction("22.92"), "tag": TAG, "hand": 3 * INCH}
    assert in_english(above.shares[0].how) == "5 turns round 2 strands of 0.013 in"
    assert in_english(below.shares[0].how) == "7 turns round 2 strands of 0.017 in"


def test_the_thick_side_is_the_lower_one_where_a_guard_is_thicker() -> None:
    guard = joint_allowances(joint("0.010 in", "0.024 in", "doubled blood"), PRACTICE)
    plain = joint_allowances(joint("0.024 in", "0.010 in", "doubled blood"), PRACTICE)
    assert guard == tuple(reversed(plain))


def test_a_doubled_strand_counts_both_legs() -> None:
    _, thin = joint_allowances(joint("0.024 in", "0.010 in", "doubled blood"), PRACTICE)
    # 0.254 round two of 0.6096 mm, 5 turns, doubled: 5 sqrt((1.2192 + pi x 0.8636)^2 + 0.254^2)
    # = 19.703, up 19.71, twice 39.42; two hands of 2 in.
    assert shares(thin) == {"wraps": Fraction("39.42"), "tag": TAG, "hand": 4 * INCH}
    assert in_english(thin.shares[0].how) == "5 turns round 2 strands of 0.024 in, doubled"


def test_a_surgeons_knot_has_a_body_besides_its_turns() -> None:
    above, _ = joint_allowances(joint("0.010 in", "0.010 in", "triple surgeon's"), PRACTICE)
    # 3 turns: 3 sqrt((0.508 + pi x 0.508)^2 + 0.254^2) = 6.358; 27 x 0.254 = 6.858
    assert shares(above) == {
        "wraps": Fraction("6.36"),
        "body": Fraction("6.86"),
        "tag": TAG,
        "hand": 2 * INCH,
    }


def test_a_perfection_loop_takes_twice_its_loop_and_a_body() -> None:
    taken = end_allowance(end("perfection loop", "0.023 in"), PRACTICE)
    # body 25 x 0.5842 = 14.605, up 14.61; loop 2 x 19.05 = 38.1; hand 4 in = 101.6
    assert shares(taken) == {
        "body": Fraction("14.61"),
        "loop": Fraction("38.1"),
        "tag": TAG,
        "hand": 4 * INCH,
    }
    assert taken.mm == Fraction("155.8975")  # 14.61 + 38.1 + 1.5875 + 101.6


def test_a_clinch_takes_turns_and_no_loop() -> None:
    taken = end_allowance(end("clinch", "4X"), PRACTICE)
    # 0.1778 mm, 5 turns: 5 sqrt((0.3556 + pi x 0.3556)^2 + 0.1778^2) = 7.417; 4 x 0.1778 = 0.7112
    assert shares(taken) == {
        "wraps": Fraction("7.42"),
        "body": Fraction("0.72"),
        "tag": TAG,
        "hand": 2 * INCH,
    }


def test_a_bare_end_takes_nothing() -> None:
    assert end_allowance(end(None, "4X"), PRACTICE) == BARE
    assert BARE.mm == 0


def test_thick_line_is_held_by_more() -> None:
    hands = [
        shares(end_allowance(end("clinch", size), PRACTICE))["hand"]
        for size in ("0.020 in", "0.013 in", "0.012 in")
    ]
    assert hands == [4 * INCH, 3 * INCH, 2 * INCH]


def test_each_side_is_rounded_up_to_a_mark_before_anything_is_summed() -> None:
    above, below = joint_allowances(joint("0.017 in", "0.013 in", "blood"), PRACTICE, INCH / 4)
    # 22.92 + 1.5875 + 76.2 = 100.71 mm = 3.965 in, which is more than 3.67 in above
    assert above.takes_mm == below.takes_mm == 4 * INCH
    exact, _ = joint_allowances(joint("0.017 in", "0.013 in", "blood"), PRACTICE)
    assert exact.takes_mm == exact.mm == Fraction("100.7075")


def test_a_joint_with_a_fold_on_each_side_keeps_them_apart() -> None:
    above, below = joint_allowances(joint("0.024 in", "0.010 in", "albright"), PRACTICE, INCH / 4)
    assert above.mm != below.mm


def test_an_own_lap_stands_for_all_the_rest() -> None:
    own = practice('[lap]\nblood = { above = "5 in", below = "3 in" }\nclinch = "2 1/2 in"\n')
    above, below = joint_allowances(joint("0.015 in", "0.013 in", "blood", own), own, INCH)
    assert above.shares == ()
    assert (above.takes_mm, below.takes_mm) == (5 * INCH, 3 * INCH)
    # A knot in one strand has one fold, to a ring too.
    assert end_allowance(end("clinch", "4X"), own).takes_mm == Fraction("63.5")
    ring = joint_allowances(joint("0.012 in", "4X", "ring joint", own), own)
    assert [side.takes_mm for side in ring] == [Fraction("63.5")] * 2
    # The finished knot is as long as before.
    assert above.barrel_mm == 5 * mm("0.015 in")


def test_one_lap_is_half_for_each_side() -> None:
    own = practice('[lap]\nblood = "6 1/4 in"\n')
    for side in joint_allowances(joint("0.015 in", "0.013 in", "blood", own), own, INCH / 4):
        assert side.takes_mm == Fraction("3.125") * INCH


def test_the_least_is_all_but_what_hands_hold() -> None:
    above, _ = joint_allowances(joint("0.013 in", "0.013 in", "blood"), PRACTICE)
    assert above.least_mm == Fraction("13.78") + TAG


def test_wire_is_folded_however_thin_and_the_line_winds() -> None:
    written = recipe(
        section("30 in", "0.021 in", knot="albright"), section("12 in", "0.015 in", "wire")
    )
    line, wire = joint_allowances(leader(written).joints[0], PRACTICE)
    # The line: 10 turns round three strands of 0.015 in; the wire: its fold alone.
    assert in_english(line.shares[0].how) == "10 turns round 3 strands of 0.015 in"
    assert "wraps" not in shares(wire)


def test_a_bimini_s_coils_lie_on_its_own_strand_and_its_loop_has_its_own_size() -> None:
    heavy, light = joint_allowances(joint("0.024 in", "0.013 in", "bimini twist"), PRACTICE)
    assert "strands of 0.013 in" in in_english(light.shares[0].how)
    assert (heavy.loop_mm, light.loop_mm) == (INCH, 6 * INCH)
    assert shares(light)["loop"] == 12 * INCH


def test_a_swivel_s_sides_are_tied_each_with_its_own_knot() -> None:
    written = recipe(
        section("30 in", "0.021 in", knot="swivel"), section("12 in", "0.015 in", "wire")
    )
    (joint,) = leader(written).joints
    line, wire = joint_allowances(joint, PRACTICE)
    assert (line.knot, wire.knot) == ("clinch", "haywire twist")
    assert line.loop_mm == 0
    assert wire.loop_mm == INCH / 4
    assert "5 turns" not in in_english(wire.shares[0].how)


def test_the_barrel_is_the_turns_side_by_side() -> None:
    above, below = joint_allowances(joint("0.013 in", "0.011 in", "blood"), PRACTICE)
    assert above.barrel_mm == 5 * mm("0.013 in")
    assert below.barrel_mm == 5 * mm("0.011 in")
    _, doubled = joint_allowances(joint("0.024 in", "0.010 in", "doubled blood"), PRACTICE)
    assert doubled.barrel_mm == 5 * 2 * mm("0.010 in")
    loop = end_allowance(end("perfection loop", "0.023 in"), PRACTICE)
    assert loop.barrel_mm == 2 * mm("0.023 in")  # no turns: two strands across


@pytest.mark.parametrize("knot", [k.name for k in PRACTICE.knots if "joint" in k.places])
def test_every_joint_leaves_a_sixteenth_of_an_inch_of_tag(knot: str) -> None:
    for side in joint_allowances(joint("0.013 in", "0.011 in", knot), PRACTICE):
        assert shares(side)["tag"] == TAG


def test_a_helix_of_no_height_is_so_many_circles() -> None:
    assert helix_mm(5, 1, 0) == pytest.approx(31.41593)
    assert helix_mm(0, 1, 12) == 12


@given(diameters, diameters, st.integers(1, 20), st.integers(1, 3))
def test_thicker_strands_and_more_turns_never_take_less(
    wound: Diameter, core: Diameter, count: int, strands: int
) -> None:
    line = wraps_mm(count, wound.mm, core.mm, strands)
    assert line >= wraps_mm(count, wound.mm, core.mm, 1)
    assert line > wraps_mm(count - 1, wound.mm, core.mm, strands)
    assert line > wraps_mm(count, wound.mm / 2, core.mm, strands)
    assert line > wraps_mm(count, wound.mm, core.mm / 2, strands)
