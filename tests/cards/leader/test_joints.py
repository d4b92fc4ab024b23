from fractions import Fraction

import pytest
from hypothesis import given, settings

from tagend.cards.leader.joints import butt_end, fly_end, joints
from tagend.cards.leader.suitability import untieable
from tagend.cards.recipe.recipe import Recipe
from tests.strategies import recipes
from tests.written import PRACTICE, practice, recipe, section


def chosen(upper: str, upper_material: str, lower: str, lower_material: str) -> tuple[str, str]:
    """Return the knot that is chosen between two strands, and the reason."""
    written = recipe(
        section("30 in", upper, upper_material), section("20 in", lower, lower_material)
    )
    (joint,) = joints(written, PRACTICE)
    return joint.knot.name, joint.reason or ""


def test_a_named_knot_is_taken_without_a_reason() -> None:
    written = recipe(section("3 ft", "2X", knot="uni to uni"), section("3 ft", "4X"))
    (joint,) = joints(written, PRACTICE)
    assert (joint.knot.name, joint.reason) == ("uni to uni", None)


def test_a_small_step_in_one_kind_of_line_is_a_blood_knot() -> None:
    reason = "one kind of line and a small step"
    assert chosen("0.013 in", "nylon", "0.011 in", "nylon") == ("blood", reason)
    assert chosen("0.023 in", "hard nylon", "0.020 in", "copolymer") == ("blood", reason)


def test_a_bigger_step_is_a_triple_surgeons() -> None:
    assert chosen("0.017 in", "nylon", "0.013 in", "nylon") == (
        "triple surgeon's",
        "not blood: it takes a step up to 0.003 in, and this is 0.004 in",
    )


def test_a_very_big_step_is_an_albright() -> None:
    assert chosen("0.028 in", "nylon", "0.013 in", "nylon") == (
        "albright",
        "not triple surgeon's: it takes a step up to 0.008 in, and this is 0.015 in",
    )


@pytest.mark.parametrize("nylon", ["nylon", "hard nylon", "copolymer"])
def test_nylon_to_fluorocarbon_is_never_a_blood_knot(nylon: str) -> None:
    knot, reason = chosen("0.013 in", nylon, "0.012 in", "fluorocarbon")
    assert knot == "triple surgeon's"
    assert reason == (
        "not blood: between nylon, which takes up water and swells, "
        "and fluorocarbon, which does not, it works loose"
    )


def test_wire_takes_an_albright() -> None:
    assert chosen("0.015 in", "nylon", "0.014 in", "wire") == (
        "albright",
        "not triple surgeon's: it does not hold on wire",
    )


def test_the_thin_end_of_a_knotless_taper_meets_the_next_section() -> None:
    knotless = section("9 ft", "0.024 in", tapers_to="0.010 in")
    (joint,) = joints(recipe(knotless, section("2 ft", "0.008 in")), PRACTICE)
    assert joint.knot.name == "blood"
    assert joint.meeting.step_mm == Fraction("0.0508")  # 2 thousandths


def test_a_butt_ends_in_a_perfection_loop_and_a_level_leader_in_a_surgeons_loop() -> None:
    tapered = butt_end(recipe(section("6 ft", "0X"), section("3 ft", "4X")), PRACTICE)
    level = butt_end(recipe(section("9 ft", "4X")), PRACTICE)
    assert tapered.knot
    assert (tapered.knot.name, tapered.reason) == ("perfection loop", "usual on a tapered butt")
    assert level.knot
    assert (level.knot.name, level.reason) == ("surgeon's loop", "usual on a level leader")


def test_a_loop_is_three_quarters_of_an_inch_where_the_recipe_says_nothing() -> None:
    nine_feet = section("9 ft", "4X")
    assert butt_end(recipe(nine_feet), PRACTICE).loop_mm == Fraction("19.05")
    assert butt_end(recipe(nine_feet, loop="1 in"), PRACTICE).loop_mm == Fraction("25.4")


def test_bare_ends_have_no_knot() -> None:
    bare = recipe(section("9 ft", "4X"), butt="none", fly="none")
    assert butt_end(bare, PRACTICE).knot is None
    assert fly_end(bare, PRACTICE).knot is None


@pytest.mark.parametrize(
    ("diameter", "material", "knot"),
    [
        ("4X", "nylon", "improved clinch"),
        ("0.015 in", "fluorocarbon", "improved clinch"),
        ("0.385 mm", "fluorocarbon", "improved clinch"),  # 0.381 mm are 0.015 in
        ("0.39 mm", "fluorocarbon", "clinch"),
        ("0.020 in", "fluorocarbon", "clinch"),
        ("0.012 in", "wire", "haywire twist"),
    ],
)
def test_line_is_kept_for_a_usual_knot_at_the_fly(diameter: str, material: str, knot: str) -> None:
    end = fly_end(recipe(section("9 ft", diameter, material)), PRACTICE)
    assert end.knot
    assert (end.knot.name, end.reason) == (knot, "none is named, so line for this one is kept")


def test_no_loop_of_ours_holds_on_wire_so_that_the_butt_stays_bare() -> None:
    end = butt_end(recipe(section("12 in", "0.012 in", "wire")), PRACTICE)
    assert (end.knot, end.reason) == (None, "no knot of the order holds here")


def test_an_own_order_comes_before_ours() -> None:
    own = practice('[choice]\njoint = ["uni to uni"]\nbutt = ["nail knot"]\nfly = ["davy"]\n')
    written = recipe(section("6 ft", "2X"), section("3 ft", "4X"))
    ends = (butt_end(written, own), fly_end(written, own))
    assert [end.knot and end.knot.name for end in ends] == ["nail knot", "davy"]
    assert joints(written, own)[0].knot.name == "uni to uni"


def test_where_nothing_of_an_own_order_suits_ours_goes_on() -> None:
    own = practice('[choice]\njoint = ["blood"]\nbutt = ["perfection loop"]\nfly = ["palomar"]\n')
    level = recipe(section("6 ft", "4X"), section("3 ft", "4X", "fluorocarbon"))
    assert [joint.knot.name for joint in joints(level, own)] == ["triple surgeon's"]
    loop = butt_end(level, own).knot
    assert loop
    assert loop.name == "surgeon's loop"
    wire = fly_end(recipe(section("12 in", "0.012 in", "wire")), own).knot
    assert wire
    assert wire.name == "haywire twist"


def test_where_nothing_suits_at_all_the_last_is_taken_and_the_audit_tells() -> None:
    no_wire = practice("[knots.albright]\nwire = false\n")
    written = recipe(section("30 in", "0.015 in"), section("12 in", "0.012 in", "wire"))
    (joint,) = joints(written, no_wire)
    assert (joint.knot.name, joint.reason) == ("albright", "no knot of the order suits")


@given(recipes)
@settings(max_examples=50)
def test_a_chosen_knot_can_always_be_tied(written: Recipe) -> None:
    for joint in joints(written, PRACTICE):
        if joint.reason is not None:
            assert untieable(joint.knot, joint.meeting) is None
