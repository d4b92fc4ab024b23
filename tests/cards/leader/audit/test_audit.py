from typing import TypeVar

import pytest
from cfractions import Fraction
from hypothesis import HealthCheck, given, settings
from msgspec import Struct
from msgspec.structs import asdict, replace

from tagend.cards.base.units import Diameter, Length, Strength, parse_strength
from tagend.cards.leader.audit import RULES, audit
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules import common_rules
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.quantities import INCH_MM, POUND_KG
from tests.strategies import recipes
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section

T = TypeVar("T")

# A leader in which every rule finds something.
ALL_WRONG = replace(
    recipe(
        section("30 in", "0.013 in", "hard nylon", "8 lb", knot="haywire twist"),
        section("3 mm", "0.015 in", "nylon", "0.9 lb", knot="blood"),
        section("20 in", "0.015 in", "nylon", "18 lb", knot="blood"),
        section("4 in", "0.006 in", "nylon", "3 lb", knot="blood"),
        section("13 in", "0.024 in", "fluorocarbon", "49 lb"),
        total="9 ft",
        line_tip="0.036 in",
        record_lengths=True,
        reach=("30 ft", "9 ft"),
    ),
    class_=parse_strength("1 kg"),
)
LEVEL = recipe(section("30 ft", "4X"), butt="perfection loop")
THIN = replace(recipe(section("5 ft", "1X"), section("2 ft", "2X")), line_weight=10)


def found(written: Recipe, by: Practice = PRACTICE) -> list[tuple[str, str, int | None]]:
    findings = audit(leader(written, by), by)
    return [(finding.rule, finding.severity, finding.section) for finding in findings]


def test_every_rule_of_the_file_has_its_function() -> None:
    assert RULES.keys() == common_rules().keys()


def test_every_rule_finds_something_in_a_bad_leader() -> None:
    rules = {rule for rule, _, _ in found(ALL_WRONG) + found(LEVEL) + found(THIN)}
    assert rules == RULES.keys()


def test_the_gravest_comes_first_and_then_from_the_butt_to_the_fly() -> None:
    ranks = [
        (["error", "warning", "note"].index(severity), section or 0)
        for _, severity, section in found(ALL_WRONG)
    ]
    assert ranks == sorted(ranks)
    assert ranks[0][0] == 0
    assert ranks[-1][0] == 2


@pytest.mark.parametrize("rule", RULES)
def test_a_rule_that_is_off_finds_nothing(rule: str) -> None:
    silent = practice(f'[rules."{rule}"]\nseverity = "off"\n')
    expected = [finding for finding in found(ALL_WRONG) if finding[0] != rule]
    assert found(ALL_WRONG, silent) == expected


def test_every_message_says_what_and_why() -> None:
    for written in (ALL_WRONG, LEVEL, THIN):
        for finding in audit(leader(written), PRACTICE):
            assert in_english(finding.says)
            assert in_english(finding.reason)


def test_a_sound_taper_has_nothing_to_heed() -> None:
    sound = recipe(
        section("40 in", "0.021 in", "nylon", "33 lb"),
        section("24 in", "0.019 in", "nylon", "28 lb"),
        section("14 in", "0.017 in", "nylon", "23 lb"),
        section("10 in", "0.015 in", "nylon", "18 lb"),
        section("20 in", "0.013 in", "nylon", "13.5 lb"),
        total="9 ft",
        line_tip="0.032 in",
    )
    assert found(sound) == []


# ---- the unit does not matter ----------------------------------------------------------------


def in_units(value: T, length: str, strength: str) -> T:
    """Return a value with every quantity in it written exactly in other units."""
    per = {"in": INCH_MM, "mm": Fraction(1), "lb": POUND_KG, "kg": Fraction(1)}
    if isinstance(value, (Length, Diameter, Strength)):
        unit = strength if isinstance(value, Strength) else length
        return replace(value, plain=f"{value.amount / per[unit]} {unit}")
    if isinstance(value, tuple):
        return tuple(in_units(item, length, strength) for item in value)  # type: ignore[return-value]
    if isinstance(value, Struct):
        inner = {name: in_units(part, length, strength) for name, part in asdict(value).items()}
        return replace(value, **inner)
    return value


@given(recipes)
@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])
def test_findings_do_not_depend_on_the_unit_a_recipe_is_written_in(written: Recipe) -> None:
    expected = found(written)
    assert found(in_units(written, "in", "lb")) == expected
    assert found(in_units(written, "mm", "kg")) == expected
