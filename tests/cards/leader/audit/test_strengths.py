import pytest

from tagend.cards.leader.audit.strengths import STRENGTH_RULES, nominal_stress_mpa
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe, Section
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    of = leader(written, by)
    return [(f.section, in_english(f.says, of)) for f in STRENGTH_RULES[rule](of, by.rules[rule])]


# ---- weak section ----------------------------------------------------------------------------


def test_a_section_above_the_tippet_may_not_be_weaker() -> None:
    weak = recipe(
        section("4 ft", "0.015 in", "nylon", "6 lb"),
        section("2 ft", "0.012 in", "nylon"),
        section("20 in", "0.010 in", "nylon", "8 lb"),
    )
    assert found("weak section", weak) == [(1, "section 1 (6 lb) is weaker than the tippet (8 lb)")]


def test_equal_strength_is_not_weaker() -> None:
    same = recipe(section("4 ft", "1X", "nylon", "8 lb"), section("2 ft", "2X", "nylon", "8 lb"))
    assert found("weak section", same) == []


def test_equal_strength_is_not_weaker_in_another_unit() -> None:
    same = recipe(
        section("4 ft", "1X", "nylon", "10 kg"), section("2 ft", "2X", "nylon", "22.04 lb")
    )
    assert found("weak section", same) == []  # 22.04 lb is 9.997 kg


def test_a_bite_guard_below_the_tippet_does_not_count() -> None:
    guarded = recipe(
        section("4 ft", "0.015 in", "nylon", "18 lb"),
        section("20 in", "0.010 in", "nylon", "8 lb"),
        section("6 in", "0.015 in", "wire", "5 lb"),
    )
    assert found("weak section", guarded) == []


def mixed_strengths(*sections: Section) -> list[tuple[int | None, str | None]]:
    worked_out = leader(recipe(*sections))
    facts = STRENGTH_RULES["weak section"](worked_out, PRACTICE.rules["weak section"])
    return [(fact.section, fact.severity) for fact in facts]


def test_strength_may_rise_at_the_joint_of_nylon_and_fluorocarbon() -> None:
    tippet = section("30 in", "0.010 in", "fluorocarbon", "8.5 lb")
    above = section("8 in", "0.013 in", "hard nylon", "8 lb")
    assert mixed_strengths(above, tippet) == [(1, "note")]
    # Further up it is a weak section as any other.
    assert mixed_strengths(above, section("8 in", "0.012 in", "nylon"), tippet) == [(1, None)]


# ---- strength for size -----------------------------------------------------------------------


def test_stress_is_force_over_area() -> None:
    # 9.6 lb = 4.35449 kg = 42.703 N; pi x 0.2794^2 / 4 = 0.061312 mm2; 42.703 / 0.061312 = 696.5
    assert nominal_stress_mpa(section("1 ft", "0X", "nylon", "9.6 lb")) == pytest.approx(
        696.5, abs=0.05
    )
    assert nominal_stress_mpa(section("1 ft", "0X", "nylon")) is None
    tapered = section("9 ft", "0.024 in", "nylon", "9 lb", tapers_to="0X")
    assert nominal_stress_mpa(tapered) is None


# Pairs in print, by material: theflyfishingforum.com, "Saltwater Flats Leader Design"; Fly Anglers
# OnLine, "Tippet diameters as expressed outside US", with gou 1 in 0.165 mm; and the last three
# M. Wigfield, "Don't go by pounds", 2011.
IN_PRINT = [
    ("0.024 in", "hard nylon", "25 lb"),
    ("0.020 in", "hard nylon", "16 lb"),
    ("0.020 in", "nylon", "16 lb"),
    ("0.020 in", "nylon", "25 lb"),
    ("0.011 in", "nylon", "9 lb"),
    ("0.007 in", "nylon", "4.3 lb"),
    ("0.024 in", "fluorocarbon", "40 lb"),
    ("0.025 in", "fluorocarbon", "50 lb"),
    ("0.165 mm", "fluorocarbon", "4 lb"),
    ("0.006 in", "nylon", "4.9 lb"),
    ("0.007 in", "nylon", "6.4 lb"),
    ("0.007 in", "fluorocarbon", "7 lb"),
    # Modern copolymer tippet: common practice, no source.
    ("2X", "copolymer", "11.5 lb"),
    ("0X", "copolymer", "15.5 lb"),
]


@pytest.mark.parametrize(("diameter", "material", "strength"), IN_PRINT)
def test_strengths_in_print_are_never_asked_for(
    diameter: str, material: str, strength: str
) -> None:
    assert found("strength for size", recipe(section("9 ft", diameter, material, strength))) == []


@pytest.mark.parametrize(
    ("diameter", "material", "strength", "meant"),
    [
        ("0.024 in", "hard nylon", "25 kg", "25 lb"),
        ("0.012 in", "hard nylon", "6.6 kg", "6.6 lb"),  # 888 MPa
        ("0.020 in", "hard nylon", "7.26 lb", "7.26 kg"),  # 16 lb, and 159 MPa
        ("0.017 in", "nylon", "22 kg", "22 lb"),
        ("0.023 in", "nylon", "30 kg", "30 lb"),
        ("0.011 in", "nylon", "9 kg", "9 lb"),
        ("0.015 in", "nylon", "8.1 lb", "8.1 kg"),  # 17.9 lb
        ("0.024 in", "fluorocarbon", "40 kg", "40 lb"),
        ("0.025 in", "fluorocarbon", "22.7 lb", "22.7 kg"),  # 50 lb
        ("5X", "nylon", "4.9 kg", "4.9 lb"),
        ("5X", "nylon", "1.5 lb", "1.5 kg"),  # 3.3 lb
        ("0.011 in", "wire", "27 kg", "27 lb"),
        ("0.011 in", "wire", "12.2 lb", "12.2 kg"),
    ],
)
def test_a_slip_between_pounds_and_kilograms_names_the_other(
    diameter: str, material: str, strength: str, meant: str
) -> None:
    ((place, says),) = found(
        "strength for size", recipe(section("9 ft", diameter, material, strength))
    )
    assert place == 1
    assert says.startswith(f"section 1: {strength} is ")
    assert says.endswith(f", {meant} is usual")


def test_another_slip_names_no_unit() -> None:
    mm_for_thou = recipe(section("9 ft", "0.20 mm", "nylon", "32 lb"))
    assert found("strength for size", mm_for_thou) == [
        (1, "section 1: 32 lb is strong for 0.20 mm nylon")
    ]


def test_threads_have_strengths_of_their_own() -> None:
    strong = recipe(section("9 ft", "0.012 in", "furled thread", "60 lb"))
    assert found("strength for size", strong) == []


def test_a_person_may_set_the_strength_of_one_material() -> None:
    own = practice('[rules."strength for size".limit]\nnylon = [340, 2000]\n')
    written = recipe(section("9 ft", "0.017 in", "nylon", "22 kg"))
    assert found("strength for size", written, own) == []
