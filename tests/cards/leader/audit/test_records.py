import re

import pytest
from msgspec.structs import replace

from tagend.cards.base.units import parse_strength
from tagend.cards.leader.audit.records import RECORD_RULES
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    of = leader(written, by)
    return [(f.section, in_english(f.says, of)) for f in RECORD_RULES[rule](of, by.rules[rule])]


# ---- record lengths --------------------------------------------------------------------------


def record(
    tippet: str,
    guard: str = "10 in",
    *,
    asked: bool = True,
    knot: str = "doubled blood",
    fly: str = "non-slip loop",
    above: str | None = None,
    record_class: str | None = None,
) -> Recipe:
    written = recipe(
        section("5 ft", "0.024 in", knot="blood"),
        section(tippet, "0.015 in", strength=above, knot=knot),
        section(guard, "0.028 in", "fluorocarbon"),
        fly=fly,
        record_lengths=asked,
    )
    return replace(written, class_=parse_strength(record_class) if record_class else None)


def test_a_class_tippet_is_measured_between_its_knots() -> None:
    assert found("class tippet", record("15 in")) == []
    assert found("class tippet", record("38.1 cm")) == []
    assert found("class tippet", record("14 7/8 in")) == [
        (2, "the tippet is 14 7/8 in between its knots, and the published least is 15 in")
    ]
    assert found("class tippet", record("14 to 20 in"))[0][0] == 2


def test_a_shock_tippet_is_measured_with_its_knots() -> None:
    # Doubled blood, 3 turns of 0.028 in below and 5 of 0.015 in doubled above: 0.084 + 0.15 in;
    # non-slip loop, 2 turns of 0.028 in and a loop of 1/4 in: 0.056 + 0.25 in. In all 0.54 in.
    assert found("shock tippet", record("20 in", "11.46 in")) == []
    assert found("shock tippet", record("20 in", "11.46 in", fly="clinch")) == []
    assert found("shock tippet", record("20 in", "11.461 in"))
    assert found("shock tippet", record("20 in", "12 in")) == [
        (
            3,
            "the bite guard is 12 9/16 in from the fly to the single strand of the tippet, "
            "and the published most is 12 in",
        )
    ]
    assert found("shock tippet", record("20 in", "10 to 12 in"))[0][0] == 3


def test_a_slim_beauty_and_a_loop_make_a_shock_tippet_of_11_85_in_too_long() -> None:
    assert found("shock tippet", record("20 in", "11.85 in", knot="slim beauty"))
    assert found("shock tippet", record("20 in", "11 in", knot="slim beauty")) == []


def test_the_loops_of_a_joint_belong_to_the_shock_tippet() -> None:
    # A usual loop on each side, beside what barrels there are.
    loops = 2 * PRACTICE.knots.joint_loop_mm
    assert loops > 25

    def looped(guard: str) -> Recipe:
        return record("20 in", guard, knot="loop to loop", fly="clinch")

    assert found("shock tippet", looped(f"{304 - float(loops):.1f} mm"))
    assert found("shock tippet", looped(f"{294 - float(loops):.1f} mm")) == []


def test_all_below_the_class_tippet_is_shock_tippet() -> None:
    traced = recipe(
        section("5 ft", "0.015 in", part="tippet", knot="albright"),
        section("8 in", "0.024 in", knot="albright", part="bite guard"),
        section("4 in", "0.014 in", "wire", part="bite guard"),
        fly="haywire twist",
        record_lengths=True,
    )
    ((place, _),) = found("shock tippet", traced)
    assert place == 2


def test_a_message_never_says_one_length_twice() -> None:
    ((_, says),) = found("shock tippet", record("20 in", "11.47 in"))
    assert "12.01 in" in says
    assert "12.00 in" in says
    ((_, says),) = found("class tippet", record("14.99 in"))
    assert "14.99 in" in says
    assert "15.00 in" in says
    ((_, says),) = found("class tippet", record("14.9999 in"))
    is_, most = re.findall(r"(\S+) mm", says)
    assert is_ != most


# ---- the class -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("record_class", "strength", "most"),
    [
        ("8 kg", "17.6 lb", None),  # 17.637 lb
        ("8 kg", "18 lb", "8 kg"),
        ("10 kg", "22.04 lb", None),
        ("10 kg", "22.05 lb", "10 kg"),
        ("10 kg", "20 lb", None),
        ("6 kg", "8 kg", "6 kg"),
        ("8 kg", None, None),
    ],
)
def test_a_tippet_is_not_stronger_than_its_class(
    record_class: str, strength: str | None, most: str | None
) -> None:
    told = found("class strength", record("20 in", above=strength, record_class=record_class))
    expected = [(2, f"the tippet bears {strength}, more than its class of {most}")] if most else []
    assert told == expected


@pytest.mark.parametrize(
    ("nominal", "real"), [("20 lb", "10 kg"), ("16 lb", "8 kg"), ("5 kg", "6 kg")]
)
def test_a_class_that_is_none_is_noted_with_the_list(nominal: str, real: str) -> None:
    written = record("20 in", above=real, record_class=nominal)
    rule = PRACTICE.rules["class strength"]
    (fact,) = RECORD_RULES["class strength"](leader(written), rule)
    assert (fact.section, fact.severity) == (None, "note")
    assert "1, 2, 3, 4, 6, 8, 10 kg" in in_english(fact.says)
    assert real in in_english(fact.reason)


def test_beyond_the_last_class_the_tippet_is_held_to_its_own() -> None:
    written = record("20 in", above="13 kg", record_class="12 kg")
    assert [place for place, _ in found("class strength", written)] == [None, 2]


def test_without_a_class_no_strength_is_compared() -> None:
    assert found("class strength", record("20 in", above="30 lb")) == []


@pytest.mark.parametrize("rule", ["class tippet", "shock tippet"])
def test_record_lengths_are_checked_only_where_asked(rule: str) -> None:
    assert found(rule, record("10 in", "20 in"))
    assert found(rule, record("10 in", "20 in", asked=False)) == []


def test_this_years_rules_may_be_set_in_a_shop_file() -> None:
    newer = practice('[rules."class tippet"]\nlimit = "12 in"\n')
    assert found("class tippet", record("14 in"), newer) == []
