import pytest
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.audit.taper import TAPER_RULES
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    of = leader(written, by)
    return [(f.section, in_english(f.says, of)) for f in TAPER_RULES[rule](of, by.rules[rule])]


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


# ---- step ------------------------------------------------------------------------------------


def test_a_step_is_told_with_its_ratio_the_limit_and_what_turns_back() -> None:
    assert found("step", taper("0.018 in", "0.013 in")) == []  # 1.38
    ((place, says),) = found("step", taper("0.020 in", "0.013 in"))
    assert place == 2
    assert "is 1.54 times as thick (0.020 in to 0.013 in)" in says
    assert "1.45 times is the most" in says
    assert "on an ideal string 21 % of a wave would turn back here" in says  # 7 / 33
    # All but that step's own leader, and the one with 0.020 to 0.011 in.
    assert "of the printed tapers with known diameters 6 of 8 stay under that" in says


def told_of(upper: str, lower: str) -> list[str]:
    (d, above), (d_below, below) = upper.split(" in "), lower.split(" in ")
    joined = recipe(section("20 in", f"{d} in", above), section("20 in", f"{d_below} in", below))
    return [says for _, says in found("step", joined)]


def test_of_unlike_materials_the_step_is_told_by_what_is_big() -> None:
    assert told_of("0.017 in nylon", "0.014 in fluorocarbon") == []
    assert told_of("0.016 in nylon", "0.010 in fluorocarbon") == []
    # 1.8 times the fourth roots of 2.0 / 4.0 and 3.5 / 2.1
    (stiff,) = told_of("0.018 in nylon", "0.010 in fluorocarbon")
    assert "bends like one 1.51 to 2.05 times as thick" in stiff
    assert "0.018 in nylon to 0.010 in fluorocarbon" in stiff
    assert "of a wave would turn back here" in stiff
    (heavy,) = told_of("0.020 in nylon", "0.010 in fluorocarbon")
    assert "is as heavy as one 1.6" in heavy
    assert "bends" not in heavy


def test_without_densities_nothing_is_said_of_waves() -> None:
    light = practice('[materials.featherline]\ncode = "Q"\nkind = "nylon"\n')
    lower = section("20 in", "0.010 in", "featherline")
    ((_, says),) = found("step", recipe(section("20 in", "0.020 in"), lower), light)
    assert "is 2.00 times as thick" in says
    assert "wave" not in says


def test_a_person_may_hold_to_a_smaller_step() -> None:
    strict = practice("[rules.step]\nlimit = 1.2\n")
    ((_, says),) = found("step", taper("0.018 in", "0.013 in"), strict)
    assert "1.2 times is the most" in says


def test_a_joint_earns_one_finding_about_its_step() -> None:
    def about_steps(written: Recipe) -> list[str]:
        return [rule for rule in TAPER_RULES for _ in found(rule, written)]

    assert about_steps(taper("0.021 in", "0.010 in")) == ["step"]
    assert about_steps(taper("0.010 in", "0.021 in", "0.019 in")) == ["rise"]
    # Nylon into heavier wire is a rise, wherever the diameters go.
    thin = section("20 in", "0.014 in", "wire", part="tippet")
    (stiff,) = found("step", recipe(section("20 in", "0.015 in"), thin))
    assert "section 2 rises: it is as heavy as one" in stiff[1]
    thick = section("20 in", "0.016 in", "wire", part="tippet")
    assert about_steps(recipe(section("20 in", "0.015 in"), thick)) == ["rise"]


def test_steps_do_not_count_into_a_guard_or_sighter_or_across_metal_or_of_threads() -> None:
    def steep(knot: str | None = None, part: Part | None = None, above: str = "nylon") -> Recipe:
        upper = section("20 in", "0.021 in", above, knot=knot)
        return recipe(upper, section("20 in", "0.010 in", part=part))

    assert len(found("step", steep())) == 1
    assert found("step", steep(knot="ring joint")) == []
    assert found("step", steep(knot="swivel")) == []
    assert found("step", steep(part="bite guard")) == []
    assert found("step", steep(part="sighter")) == []
    assert found("step", steep(above="furled thread")) == []


def test_what_print_rounds_off_is_no_rise_and_no_guard() -> None:
    same = recipe(section("5 ft", "0.25 mm"), section("5 ft", "0.010 in"))  # 0.254 mm
    assert found("rise", same) == []
    assert leader(same).tippet.place == 2


# ---- an assumed guard ------------------------------------------------------------------------


def test_a_thick_last_strand_that_nobody_called_a_guard_is_asked_for() -> None:
    def ending(part: Part | None = None, material: str = "nylon") -> Recipe:
        return recipe(
            section("3 ft", "0.017 in"),
            section("2 ft", "0.015 in"),
            section("2 ft", "0.031 in", material, part=part),
        )

    ((place, says),) = found("assumed guard", ending())
    assert place == 3
    assert "thicker than the one above (0.015 in to 0.031 in)" in says
    assert found("assumed guard", ending("bite guard")) == []
    assert found("assumed guard", ending("tippet")) == []  # that is a rise
    assert found("assumed guard", ending(material="wire")) == []


def test_below_a_named_tippet_a_guard_is_meant() -> None:
    named = recipe(section("3 ft", "0.015 in", part="tippet"), section("6 in", "0.031 in"))
    assert found("assumed guard", named) == []


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


def on_line(weight: int, butt: str, *, material: str = "nylon", level: bool = False) -> Recipe:
    lower = section("3 ft", butt if level else "5X", material)
    return replace(recipe(section("5 ft", butt, material), lower), line_weight=weight)


@pytest.mark.parametrize(
    ("weight", "butt"),
    [
        # Printed butts by line: rec.outdoors.fishing.fly, 17 December 2003; an anglers' forum and
        # theflyfishingforum.com for 5 and 6; neflyrodders.org for salt water, 30 lb on 8 and
        # 50 lb on 10, which is 0.020 to 0.028 in.
        *((1, "0.017 in"), (2, "0.017 in"), (3, "0.019 in"), (4, "0.019 in"), (5, "0.021 in")),
        *((5, "0.019 in"), (6, "0.021 in"), (8, "0.023 in"), (9, "0.023 in"), (8, "0.020 in")),
        *((10, "0.022 in"), (10, "0.028 in"), (12, "0.030 in")),
        # Slack-line leaders: F4 and F5 of the published leaders.
        *((4, "0.017 in"), (5, "0.015 in")),
        # A nymph leader's thin butt: common practice, no source.
        (3, "0.010 in"),
    ],
)
def test_butts_in_print_suit_their_lines(weight: int, butt: str) -> None:
    assert found("butt for line", on_line(weight, butt)) == []


@pytest.mark.parametrize(
    ("weight", "butt"),
    [(10, "0.010 in"), (8, "0.010 in"), (5, "0.010 in"), (4, "0.031 in"), (5, "0.041 in")],
)
def test_a_butt_that_no_print_has_on_such_a_line_is_asked_for(weight: int, butt: str) -> None:
    ((place, says),) = found("butt for line", on_line(weight, butt))
    assert place == 1
    assert f"weight {weight}" in says
    assert f"the butt is {butt}" in says


def test_a_butt_is_held_against_the_line_once() -> None:
    thin = on_line(10, "0.010 in")
    assert found("butt for line", replace(thin, line_tip=parse_diameter("0.036 in"))) == []
    assert found("butt for line", replace(thin, line_weight=None)) == []
    assert found("butt for line", on_line(10, "0.010 in", level=True)) == []
    droppers = recipe(*[section("5 ft", "0.010 in", dropper="6 in")] * 2, section("4 ft", "2X"))
    assert found("butt for line", replace(droppers, line_weight=7)) == []
    assert found("butt for line", on_line(10, "0.010 in", material="furled thread")) == []
