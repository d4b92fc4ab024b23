from fractions import Fraction

import pytest

from tagend.cards.leader.audit.taper import TAPER_RULES, stiffness_ratio
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe
from tests.written import PRACTICE, leader, practice, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    return [
        (f.section, f.says) for f in TAPER_RULES[rule](leader(written, by), *by.rules[rule].limits)
    ]


def taper(*diameters: str, material: str = "nylon") -> Recipe:
    return recipe(*(section("20 in", diameter, material) for diameter in diameters))


EVEN = taper("0.021 in", "0.019 in", "0.017 in", "0.015 in", "0.013 in")


@pytest.mark.parametrize("rule", TAPER_RULES)
def test_an_even_taper_has_nothing_to_heed(rule: str) -> None:
    assert found(rule, EVEN) == []


# ---- rise ------------------------------------------------------------------------------------


def test_a_rise_is_found_where_it_stands() -> None:
    assert found("rise", taper("0.013 in", "0.015 in", "0.011 in")) == [
        (2, "section 2 is thicker than the one above (0.013 in to 0.015 in)")
    ]


def test_a_bite_guard_and_a_sighter_may_be_thicker() -> None:
    guarded = recipe(section("3 ft", "0.013 in"), section("6 in", "0.024 in", part="bite guard"))
    sighted = recipe(
        section("3 ft", "0.013 in"),
        section("1 ft", "0.015 in", part="sighter"),
        section("3 ft", "0.007 in"),
    )
    assert found("rise", guarded) == []
    assert found("rise", sighted) == []


def test_a_knotless_taper_is_held_by_the_end_that_meets_the_next_section() -> None:
    def tapered(tippet: str) -> Recipe:
        knotless = section("9 ft", "0.024 in", tapers_to="0.010 in")
        return recipe(knotless, section("2 ft", tippet, part="tippet"))

    assert found("rise", tapered("0.010 in")) == []
    assert found("rise", tapered("0.011 in")) == [
        (2, "section 2 is thicker than the one above (0.010 in to 0.011 in)")
    ]


def test_a_strand_that_grows_towards_the_fly_is_a_rise_too() -> None:
    assert found("rise", recipe(section("9 ft", "0.010 in", tapers_to="0.024 in"))) == [
        (1, "section 1 grows thicker towards the fly")
    ]


# ---- step, ratio, stiffness ------------------------------------------------------------------


def test_a_step_may_reach_the_limit_and_not_pass_it() -> None:
    assert found("step", taper("0.021 in", "0.017 in")) == []
    assert found("step", taper("0.0215 in", "0.017 in")) == [
        (
            2,
            "the step to section 2 is 0.0045 in (0.0215 in to 0.017 in), more than 0.004 in",
        )
    ]


def test_a_person_may_hold_to_a_smaller_step() -> None:
    strict = practice('[rules.step]\nlimit = "0.1 mm"\n')
    assert found("step", taper("0.021 in", "0.017 in"), strict) == [
        (2, "the step to section 2 is 0.004 in (0.021 in to 0.017 in), more than 0.0039 in")
    ]


def test_a_ratio_is_found_where_a_small_step_is_steep() -> None:
    # 0.007 / 0.005 = 1.4 and 0.006 / 0.004 = 1.5 pass; 0.0061 / 0.004 = 1.525 does not.
    assert found("diameter ratio", taper("4X", "6X")) == []
    assert found("diameter ratio", taper("5X", "7X")) == []
    assert found("diameter ratio", taper("6.1 thou", "7X")) == [
        (2, "the strand above section 2 is 1.52 times as thick (0.0061 in to 0.004 in)")
    ]


def test_a_stiffness_step_goes_by_the_fourth_power_of_the_diameter() -> None:
    # (20 / 13)^4 = 5.60 passes, (21 / 13)^4 = 6.81 does not.
    assert found("stiffness step", taper("0.020 in", "0.013 in")) == []
    assert found("stiffness step", taper("0.021 in", "0.013 in")) == [
        (2, "above section 2 the strand is 6.8 times as stiff")
    ]
    # Upwards too: (13 / 21)^4 = 0.147, less than a sixth.
    upwards = recipe(section("20 in", "0.013 in"), section("20 in", "0.021 in", part="tippet"))
    assert found("stiffness step", upwards) == [
        (2, "above section 2 the strand is 0.1 times as stiff")
    ]


def test_stiffness_counts_the_moduli_where_the_materials_differ() -> None:
    def ratio(upper: str, lower: str) -> Fraction | None:
        joint = leader(recipe(section("3 ft", "0X", upper), section("3 ft", "1X", lower))).joints[0]
        return stiffness_ratio(joint)

    power = Fraction(11, 10) ** 4
    assert ratio("nylon", "nylon") == power
    assert ratio("hard nylon", "hard nylon") == power  # one material: its modulus drops out
    # Nylon 2.0 to 3.5 and fluorocarbon 2.1 to 4.0 GPa, by their middles: 2.75 / 3.05 = 5.5 / 6.1.
    assert ratio("nylon", "fluorocarbon") == power * Fraction("5.5") / Fraction("6.1")
    assert ratio("fluorocarbon", "nylon") == power * Fraction("6.1") / Fraction("5.5")
    # No published modulus, no answer.
    assert ratio("hard nylon", "fluorocarbon") is None
    assert ratio("nylon", "braided thread") is None


STEEP_RULES = ("step", "diameter ratio", "stiffness step")


@pytest.mark.parametrize("rule", STEEP_RULES)
def test_steps_do_not_count_into_a_bite_guard_or_across_a_ring(rule: str) -> None:
    def steep(knot: str | None = None, part: Part | None = None) -> Recipe:
        upper = section("20 in", "0.021 in", knot=knot)
        return recipe(upper, section("20 in", "0.010 in", part=part))

    assert len(found(rule, steep())) == 1
    assert found(rule, steep(knot="ring joint")) == []
    assert found(rule, steep(knot="swivel")) == []
    assert found(rule, steep(part="bite guard")) == []


# ---- same diameter, butt and line ------------------------------------------------------------


def test_two_sections_of_one_strand_are_noted() -> None:
    twice = recipe(section("3 ft", "0.007 in"), section("3 ft", "4X"))
    assert found("same diameter", twice) == [(2, "sections 1 and 2 are the same strand")]


def test_a_knot_that_does_more_than_join_one_strand_is_not_noted() -> None:
    lower = section("3 ft", "4X")
    for upper in (
        section("3 ft", "4X", "copolymer"),
        section("3 ft", "4X", dropper="6 in"),
        section("3 ft", "4X", knot="ring joint"),
        section("3 ft", "3.5X"),
    ):
        assert found("same diameter", recipe(upper, lower)) == []


@pytest.mark.parametrize(
    ("butt", "says"),
    [
        ("0.017 in", "the butt is 47 % of the line's tip (0.036 in)"),  # 17 / 36 = 0.472
        ("0.018 in", None),  # a half, the limit itself
        ("0.024 in", None),  # two thirds
        ("0.0288 in", None),  # 0.8, the limit itself
        ("0.030 in", "the butt is 83 % of the line's tip (0.036 in)"),
    ],
)
def test_a_butt_bends_with_the_tip_of_the_line(butt: str, says: str | None) -> None:
    written = recipe(section("9 ft", butt), line_tip="0.036 in")
    assert found("butt and line", written) == ([(1, says)] if says else [])


def test_without_a_line_there_is_nothing_to_hold_the_butt_against() -> None:
    assert found("butt and line", taper("0.005 in")) == []
