"""Record leaders: IGFA International Angling Rules, fly section.

As reproduced by the Game Fishing Association of Australia, "Fly Equipment"; classes from
T. Bishop, "World Record Line-Class Confusion". The rules are edited each year.
"""

import pytest
from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.base.units import parse_length, parse_strength
from tagend.cards.leader.audit import audit
from tagend.cards.leader.said import Said
from tagend.cards.practice.rules import common_rules
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.quantities import POUND_KG
from tests.told import in_english
from tests.written import PRACTICE, leader, recipe, section

RULES = common_rules()


def record_rules(written: Recipe) -> list[str]:
    """Return the rules on record lengths that find something."""
    findings = audit(leader(written), PRACTICE)
    return [f.rule for f in findings if f.rule in ("class tippet", "shock tippet")]


def record(tippet: str, guard: str) -> Recipe:
    return recipe(
        section("5 ft", "0.024 in"),
        section(tippet, "0.015 in"),
        section(guard, "0.024 in", "fluorocarbon", knot=None),
        fly="non-slip loop",
        record_lengths=True,
    )


def test_a_class_tippet_is_at_least_38_10_cm_inside_its_knots() -> None:
    assert RULES["class tippet"].limits == (parse_length("38.10 cm").mm,)
    assert parse_length("38.10 cm").mm == parse_length("15 in").mm
    assert record_rules(record("38.10 cm", "6 in")) == []
    assert record_rules(record("38.0 cm", "6 in")) == ["class tippet"]


def test_a_shock_tippet_is_at_most_30_48_cm_with_its_knots() -> None:
    assert RULES["shock tippet"].limits == (parse_length("30.48 cm").mm,)
    assert parse_length("30.48 cm").mm == parse_length("12 in").mm
    # The two are measured by opposite rules: 12 in between the knots is too long with them.
    assert record_rules(record("20 in", "12 in")) == ["shock tippet"]
    assert record_rules(record("20 in", "11 in")) == []


def test_the_cut_of_a_class_tippet_is_longer_by_two_knots_and_two_hands() -> None:
    tippet = leader(record("15 in", "6 in")).pieces[1]
    two_hands = 2 * parse_length("3 in").mm
    assert tippet.cut_mm > parse_length("15 in").mm + two_hands


def test_both_rules_are_published_and_print_no_ruling() -> None:
    for name in ("class tippet", "shock tippet"):
        assert RULES[name].standing == "published"
        assert "IGFA" in RULES[name].source
        assert "not a ruling" in in_english(Said(name))


@pytest.mark.parametrize(
    ("kg", "pounds"),
    [
        (1, "2.205"),
        (2, "4.409"),
        (3, "6.614"),
        (4, "8.818"),
        (6, "13.228"),
        (8, "17.637"),
        (10, "22.046"),
    ],
)
def test_a_class_is_its_kilograms_and_not_its_nominal_pounds(kg: int, pounds: str) -> None:
    strength = parse_strength(f"{kg} kg")
    assert strength.kg == kg
    assert round(strength.kg / POUND_KG, 3) == Fraction(pounds)


def test_the_audit_has_these_classes() -> None:
    assert [*RULES["class strength"].limits] == [1, 2, 3, 4, 6, 8, 10]
    assert RULES["class strength"].standing == "published"


@pytest.mark.parametrize(
    ("nominal", "truncated", "above"),
    # Pounds as lists print them, truncated: bishfish.co.nz.
    [
        ("20 lb", "22.04 lb", "22.05 lb"),
        ("16 lb", "17.63 lb", "17.64 lb"),
        ("12 lb", "13.22 lb", "13.23 lb"),
    ],
)
def test_a_class_that_is_called_by_pounds_breaks_higher(
    nominal: str, truncated: str, above: str
) -> None:
    def rules(strength: str) -> list[str]:
        tippet = section("20 in", "0.015 in", strength=strength)
        written = replace(
            recipe(section("5 ft", "0.020 in"), tippet), class_=parse_strength(nominal)
        )
        findings = audit(leader(written), PRACTICE)
        return [f.severity for f in findings if f.rule == "class strength"]

    assert rules(truncated) == ["note"]  # pounds are no class
    assert rules(above) == ["error", "note"]
