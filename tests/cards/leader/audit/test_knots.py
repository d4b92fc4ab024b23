import pytest
from msgspec.structs import replace

from tagend.cards.leader.audit.knots import KNOT_RULES
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules import Severity
from tagend.cards.recipe.recipe import Recipe
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section

Fact = tuple[int | None, str, Severity | None, str | None]


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[Fact]:
    of = leader(written, by)
    return [
        (f.section, in_english(f.says, of), f.severity, in_english(f.reason, of) or None)
        for f in KNOT_RULES[rule](of, by.rules[rule])
    ]


def joined(upper: tuple[str, str], knot: str | None, lower: tuple[str, str]) -> Recipe:
    return recipe(section("30 in", *upper, knot=knot), section("20 in", *lower), fly="clinch")


@pytest.mark.parametrize("rule", KNOT_RULES)
@pytest.mark.parametrize(
    "written",
    [
        joined(("0.013 in", "nylon"), "blood", ("0.011 in", "nylon")),
        joined(("0.013 in", "nylon"), "triple surgeon's", ("0.011 in", "fluorocarbon")),
        recipe(section("9 ft", "4X")),
        recipe(
            section("30 in", "0.015 in", knot="albright"),
            section("12 in", "0.014 in", "wire"),
            fly="haywire twist",
        ),
    ],
)
def test_knots_that_suit_are_not_spoken_of(rule: str, written: Recipe) -> None:
    assert found(rule, written) == []


def test_a_knot_that_does_not_hold_on_wire_cannot_be_tied() -> None:
    wired = joined(("0.015 in", "nylon"), "blood", ("0.014 in", "wire"))
    assert found("untieable knot", wired) == [
        (1, "blood below section 1", None, "it does not hold on single-strand wire"),
        (2, "clinch at the fly", None, "it does not hold on single-strand wire"),
    ]


def test_a_wire_twist_cannot_be_tied_in_nylon() -> None:
    assert found("untieable knot", recipe(section("9 ft", "4X"), fly="haywire twist")) == [
        (1, "haywire twist at the fly", None, "it is for wire alone")
    ]


def test_a_loop_in_wire_cannot_be_tied() -> None:
    trace = recipe(section("12 in", "0.012 in", "wire"), butt="surgeon's loop")
    assert found("untieable knot", trace) == [
        (1, "surgeon's loop at the butt", None, "it does not hold on single-strand wire")
    ]


def test_the_ends_of_a_bought_piece_are_its_own() -> None:
    trace = recipe(section("12 in", "0.012 in", "wire", bought=True), butt="surgeon's loop")
    assert found("untieable knot", trace) == []


@pytest.mark.parametrize("knot", ["perfection loop", "surgeon's loop", "nail knot"])
def test_no_knot_is_tied_in_a_braided_or_furled_butt(knot: str) -> None:
    furled = section("5 ft", "0.040 in", "furled thread")
    below = section("2 ft", "3X")
    ((place, says, *_),) = found("untieable knot", recipe(furled, below, butt=knot))
    assert (place, says) == (1, f"{knot} at the butt")
    assert found("untieable knot", recipe(furled, below, butt="loop to loop")) == []


def test_a_furled_piece_has_no_tag_for_a_dropper() -> None:
    furled = section("5 ft", "0.040 in", "furled thread", dropper="6 in")
    ((place, says, *_),) = found("untieable knot", recipe(furled, section("2 ft", "3X")))
    assert (place, says) == (1, "the dropper below section 1")


def test_blood_from_nylon_to_fluorocarbon_is_warned_of_with_its_reason() -> None:
    soft = joined(("0.013 in", "nylon"), "blood", ("0.012 in", "fluorocarbon"))
    ((place, says, severity, reason),) = found("unfit knot", soft)
    assert (place, says, severity) == (1, "blood below section 1", None)
    assert reason is not None
    assert "cut into softer nylon" in reason


def test_where_print_disagrees_it_is_a_note() -> None:
    hard = joined(("0.013 in", "hard nylon"), "blood", ("0.012 in", "fluorocarbon"))
    assert [severity for *_, severity, _ in found("unfit knot", hard)] == ["note"]
    unlike = joined(("0.013 in", "hard nylon"), "blood", ("0.010 in", "fluorocarbon"))
    assert [severity for *_, severity, _ in found("unfit knot", unlike)] == [None]


def test_a_knot_that_a_person_names_against_custom_is_a_note() -> None:
    own = practice("[knots.blood]\nlargest_ratio = 1.2\n")
    steep = joined(("0.017 in", "nylon"), "blood", ("0.013 in", "nylon"))
    ((_, _, severity, reason),) = found("unfit knot", steep, own)
    assert severity == "note"
    assert reason is not None
    assert "1.31 times" in reason
    worked_out = leader(steep, own)
    ruled = replace(worked_out, joints=(replace(worked_out.joints[0], own=False),))
    (fact,) = KNOT_RULES["unfit knot"](ruled, PRACTICE.rules["unfit knot"])
    assert fact.severity is None  # what our own rule chose is no person's wish


def test_a_tucked_clinch_in_thick_line_is_unfit() -> None:
    thick = recipe(section("9 ft", "0.028 in"), fly="improved clinch")
    assert found("unfit knot", thick) == [
        (
            1,
            "improved clinch at the fly",
            "note",
            "it draws up on strands up to 0.015 in, and this is 0.028 in",
        )
    ]


def test_a_perfection_loop_sits_ill_on_a_level_leader() -> None:
    level = recipe(section("9 ft", "4X"), butt="perfection loop")
    assert found("unfit loop", level) == [(1, "perfection loop on a level leader", None, None)]
    tapered = recipe(section("6 ft", "0X"), section("3 ft", "4X"), butt="perfection loop")
    assert found("unfit loop", tapered) == []
    assert found("unfit loop", recipe(section("9 ft", "4X"), butt="surgeon's loop")) == []
    assert found("unfit loop", recipe(section("9 ft", "4X"), butt="none")) == []
