import pytest
from cfractions import Fraction
from hypothesis import given, settings

from tagend.cards.leader.choosing import butt_end, fly_end, joints
from tagend.cards.leader.suitability import untieable
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe
from tests.strategies import recipes
from tests.told import in_english
from tests.written import PRACTICE, practice, recipe, section


def chosen(upper: str, upper_material: str, lower: str, lower_material: str) -> tuple[str, str]:
    """Return the knot that is chosen between two strands, and the reason."""
    written = recipe(
        section("30 in", upper, upper_material), section("20 in", lower, lower_material)
    )
    (joint,) = joints(written, PRACTICE)
    return joint.knot.name, in_english(joint.reason)


def test_a_named_knot_is_taken_without_a_reason() -> None:
    written = recipe(section("3 ft", "2X", knot="uni to uni"), section("3 ft", "4X"))
    (joint,) = joints(written, PRACTICE)
    assert (joint.knot.name, joint.reason) == ("uni to uni", None)


def test_a_small_step_in_one_kind_of_line_is_a_blood_knot() -> None:
    reason = "one kind of line and a small step"
    assert chosen("0.013 in", "nylon", "0.011 in", "nylon") == ("blood", reason)
    assert chosen("0.023 in", "hard nylon", "0.020 in", "copolymer") == ("blood", reason)


@pytest.mark.parametrize(
    ("upper", "lower"),
    [
        ("0.032 in", "0.028 in"),  # butts of hard nylon, where a surgeon's knot does not seat
        ("0.028 in", "0.024 in"),
        ("0.017 in", "0.013 in"),
        ("0.014 in", "0.010 in"),  # 1.4 times: commonly tied
        ("0.007 in", "0.005 in"),  # two thousandths in fine line, whatever the ratio
    ],
)
def test_a_customary_ratio_is_a_blood_knot_however_many_thousandths_it_is(
    upper: str, lower: str
) -> None:
    for material in ("hard nylon", "fluorocarbon"):
        assert chosen(upper, material, lower, material)[0] == "blood"


def test_a_bigger_step_is_a_triple_surgeons() -> None:
    assert chosen("0.017 in", "nylon", "0.011 in", "nylon") == ("triple surgeon's", "a big step")


def test_a_very_big_step_is_an_albright() -> None:
    knot, reason = chosen("0.022 in", "nylon", "0.010 in", "nylon")
    assert knot == "albright"
    assert reason.startswith("not triple surgeon's: it joins strands up to 2 times as thick")


def test_line_too_thick_for_a_blood_knot_is_joined_by_what_still_draws_up() -> None:
    assert chosen("0.040 in", "nylon", "0.036 in", "nylon")[0] == "albright"


@pytest.mark.parametrize("nylon", ["nylon", "hard nylon", "copolymer"])
def test_nylon_to_fluorocarbon_is_never_a_blood_knot(nylon: str) -> None:
    chose = chosen("0.013 in", nylon, "0.012 in", "fluorocarbon")
    assert chose == ("triple surgeon's", "nylon meets fluorocarbon")


@pytest.mark.parametrize("wire", ["wire", "stranded wire", "coated wire"])
def test_wire_takes_an_albright_and_is_folded_in_it(wire: str) -> None:
    assert chosen("0.021 in", "nylon", "0.015 in", wire)[0] == "albright"
    written = recipe(section("30 in", "0.021 in"), section("12 in", "0.015 in", wire))
    (joint,) = joints(written, PRACTICE)
    assert (joint.above.turns, joint.below.turns, joint.winds) == (10, 0, "above")


def test_two_wires_take_a_swivel() -> None:
    assert chosen("0.015 in", "wire", "0.012 in", "wire")[0] == "swivel"


def test_a_furled_butt_is_joined_by_its_loop_and_never_tied() -> None:
    assert chosen("0.040 in", "furled thread", "0.012 in", "nylon")[0] == "loop to loop"


@pytest.mark.parametrize(("part", "knot"), [("bite guard", "triple surgeon's"), (None, "blood")])
def test_a_guard_is_a_big_step_though_its_ratio_is_small(part: Part | None, knot: str) -> None:
    upper = section("20 in", "0.018 in", "fluorocarbon", part="tippet" if part else None)
    lower = section("12 in", "0.020 in" if part else "0.016 in", "fluorocarbon", part=part)
    (joint,) = joints(recipe(upper, lower), PRACTICE)
    assert joint.knot.name == knot


def test_one_limit_stands_for_the_choice_and_for_the_audit() -> None:
    strict = practice("[rules.step]\nlimit = 1.1\n")
    written = recipe(section("30 in", "0.013 in"), section("20 in", "0.011 in"))
    (joint,) = joints(written, strict)
    assert joint.knot.name == "triple surgeon's"
    assert any(each.rule == "step" for each in worksheet(written, strict).findings)


@pytest.mark.parametrize(
    ("knot", "winds"),
    [("blood", "both"), ("albright", "below"), ("loop to loop", None), ("bimini twist", "below")],
)
def test_which_strand_winds(knot: str, winds: str | None) -> None:
    written = recipe(section("30 in", "0.013 in", knot=knot), section("20 in", "0.011 in"))
    assert joints(written, PRACTICE)[0].winds == winds


def test_the_thin_end_of_a_knotless_taper_meets_the_next_section() -> None:
    knotless = section("9 ft", "0.024 in", tapers_to="0.010 in")
    (joint,) = joints(recipe(knotless, section("2 ft", "0.008 in")), PRACTICE)
    assert joint.knot.name == "blood"
    assert joint.meeting.step_mm == Fraction("0.0508")  # 2 thousandths


def test_a_butt_ends_in_a_perfection_loop_and_a_level_leader_in_a_surgeons_loop() -> None:
    tapered = butt_end(recipe(section("6 ft", "0X"), section("3 ft", "4X")), PRACTICE)
    level = butt_end(recipe(section("9 ft", "4X")), PRACTICE)
    assert tapered.knot
    assert tapered.knot.name == "perfection loop"
    assert in_english(tapered.reason) == "usual on a tapered butt"
    assert level.knot
    assert level.knot.name == "surgeon's loop"
    assert in_english(level.reason) == "usual on a level leader"


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
    assert end.knot.name == knot
    why = "none is named" if knot == "improved clinch" else "not "
    assert in_english(end.reason).startswith(why)


def test_no_loop_of_ours_holds_on_wire_so_that_the_butt_stays_bare() -> None:
    end = butt_end(recipe(section("12 in", "0.012 in", "wire")), PRACTICE)
    assert (end.knot, in_english(end.reason)) == (None, "no knot of the order suits")


def test_an_own_order_comes_before_ours() -> None:
    own = practice(
        '[choice]\n"same line" = "uni to uni"\nbutt = ["nail knot"]\nfly = ["davy", "clinch"]\n'
    )
    written = recipe(section("6 ft", "2X"), section("3 ft", "4X"))
    ends = (butt_end(written, own), fly_end(written, own))
    assert [end.knot and end.knot.name for end in ends] == ["nail knot", "davy"]
    (joint,) = joints(written, own)
    assert (joint.knot.name, joint.own) == ("uni to uni", True)
    assert "your own choice" in in_english(joint.reason)


def test_an_own_habit_that_cannot_be_tied_is_passed_over_and_one_that_can_is_kept() -> None:
    own = practice(
        '[choice]\nwire = ["blood"]\n"nylon to fluorocarbon" = ["blood"]\nfly = ["davy"]\n'
    )
    mixed = recipe(section("6 ft", "4X"), section("3 ft", "4X", "fluorocarbon"))
    assert [joint.knot.name for joint in joints(mixed, own)] == ["blood"]
    wired = recipe(section("6 ft", "4X"), section("1 ft", "0.012 in", "wire"))
    assert [joint.knot.name for joint in joints(wired, own)] == ["albright"]
    wire = fly_end(wired, own)
    assert wire.knot
    assert (wire.knot.name, wire.own) == ("haywire twist", False)


def test_where_nothing_suits_the_last_that_can_be_tied_is_taken() -> None:
    thin = practice(
        "[knots.albright]\nthickest = '0.030 in'\n[knots.'uni to uni']\nthickest = '0.03 in'\n"
    )
    written = recipe(section("30 in", "0.040 in"), section("12 in", "0.036 in"))
    (joint,) = joints(written, thin)
    assert (joint.knot.name, in_english(joint.reason)) == ("albright", "no knot of the order suits")


def test_an_own_habit_and_the_first_choice_are_liked_and_what_stands_in_is_not() -> None:
    def liked(butt: str, by: Practice) -> bool:
        (joint,) = joints(recipe(section("6 ft", butt), section("3 ft", "0.030 in")), by)
        return joint.liked

    assert liked("0.032 in", PRACTICE)
    assert not liked("0.040 in", PRACTICE)  # no blood knot draws up on it
    assert liked("0.040 in", practice('[choice]\n"same line" = "albright"\n'))


@given(recipes)
@settings(max_examples=50)
def test_a_chosen_knot_can_always_be_tied(written: Recipe) -> None:
    for joint in joints(written, PRACTICE):
        if joint.reason is not None:
            assert untieable(joint.knot, joint.meeting) is None
