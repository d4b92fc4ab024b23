import pytest

from tagend.cards.leader.audit.lengths import LENGTH_RULES, nominal_stress_mpa
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe, Section
from tests.written import PRACTICE, leader, practice, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    return [
        (f.section, f.says) for f in LENGTH_RULES[rule](leader(written, by), *by.rules[rule].limits)
    ]


SOUND = recipe(
    section("4 ft", "0.017 in", "nylon", "23 lb"),
    section("2 ft", "0.013 in", "nylon", "13.5 lb"),
    section("20 in", "0.011 in", "nylon", "9.6 lb"),
    section("10 in", "0.024 in", "fluorocarbon", "49 lb"),
    total="8 1/2 ft",
    record_lengths=True,
)


@pytest.mark.parametrize("rule", LENGTH_RULES)
def test_a_sound_leader_has_nothing_to_heed(rule: str) -> None:
    assert found(rule, SOUND) == []


# ---- too short -------------------------------------------------------------------------------


def short(length: str) -> Recipe:
    # Blood knots: 0.009 to 0.008 in, 7 turns of 0.008 = 0.056 in; 0.008 to 0.007 in, 7 again.
    # So the knots at both ends of the 0.008 in section are 0.112 in = 2.8448 mm long.
    return recipe(section("3 ft", "2X"), section(length, "3X"), section("20 in", "4X"))


def test_a_section_is_longer_than_its_two_knots() -> None:
    assert found("too short", short("0.113 in")) == []
    assert found("too short", short("0.112 in")) == [(2, "section 2 has 1/8 in between its knots")]


def test_a_cut_shorter_than_its_knots_leaves_nothing() -> None:
    cut = recipe(section("3 ft", "2X"), section("3 in", "3X"), lengths="cut")
    assert found("too short", cut) == [(2, "section 2 has 0 in between its knots")]


def test_the_shortest_of_a_range_counts() -> None:
    assert found("too short", short("0.1 to 10 in")) == [
        (2, "section 2 has 1/8 in between its knots")  # 0.1 in, to a sixteenth
    ]


def test_a_bought_piece_is_as_short_as_it_is() -> None:
    bought = recipe(section("3 ft", "2X"), section("1 mm", "3X", bought=True))
    assert found("too short", bought) == []


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
    facts = LENGTH_RULES["weak section"](worked_out)
    return [(fact.section, fact.severity) for fact in facts]


def test_strength_may_rise_at_the_joint_of_nylon_and_fluorocarbon() -> None:
    tippet = section("30 in", "0.010 in", "fluorocarbon", "8.5 lb")
    above = section("8 in", "0.013 in", "hard nylon", "8 lb")
    assert mixed_strengths(above, tippet) == [(1, "note")]
    # Further up it is a weak section as any other.
    assert mixed_strengths(above, section("8 in", "0.012 in", "nylon"), tippet) == [(1, None)]


# ---- stated total ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("length", "says"),
    [
        ("9 ft", None),
        ("108 1/2 in", None),
        ("107.5 in", None),
        ("2.75 m", None),  # 108.27 in
        ("109 in", "the recipe says 9 ft, its sections make 9 ft 1 in"),
        ("107 in", "the recipe says 9 ft, its sections make 8 ft 11 in"),
        ("100 to 107 in", "the recipe says 9 ft, its sections make 8 ft 4 in to 8 ft 11 in"),
        ("100 to 112 in", None),
    ],
)
def test_the_sections_make_the_stated_total_to_half_an_inch(length: str, says: str | None) -> None:
    written = recipe(section(length, "4X"), total="9 ft")
    assert found("stated total", written) == ([(None, says)] if says else [])


def test_a_stated_total_is_held_against_finished_lengths() -> None:
    cut = recipe(section("9 ft", "4X"), total="9 ft", lengths="cut", butt="none", fly="none")
    assert found("stated total", cut) == []  # bare ends take nothing
    tied = recipe(section("9 ft", "4X"), total="9 ft", lengths="cut")
    assert len(found("stated total", tied)) == 1


# ---- strength for size -----------------------------------------------------------------------


def test_stress_is_force_over_area() -> None:
    # 9.6 lb = 4.35449 kg = 42.703 N; pi x 0.2794^2 / 4 = 0.061312 mm2; 42.703 / 0.061312 = 696.5
    assert nominal_stress_mpa(section("1 ft", "0X", "nylon", "9.6 lb")) == pytest.approx(
        696.5, abs=0.05
    )
    assert nominal_stress_mpa(section("1 ft", "0X", "nylon")) is None
    tapered = section("9 ft", "0.024 in", "nylon", "9 lb", tapers_to="0X")
    assert nominal_stress_mpa(tapered) is None


@pytest.mark.parametrize(
    ("diameter", "strength", "says"),
    [
        ("4X", "6 lb", None),
        ("0.007 in", "13 lb", "section 1: 13 lb is strong for 0.007 in"),  # kg for lb would be 6
        ("0.23 mm", "0.9 kg", "section 1: 0.9 kg is weak for 0.23 mm"),
    ],
)
def test_a_slip_of_unit_shows_in_strength_for_size(
    diameter: str, strength: str, says: str | None
) -> None:
    written = recipe(section("9 ft", diameter, "nylon", strength))
    assert found("strength for size", written) == ([(1, says)] if says else [])


@pytest.mark.parametrize("material", ["wire", "braided thread", "furled thread"])
def test_wire_and_thread_have_strengths_of_their_own(material: str) -> None:
    strong = recipe(section("9 ft", "0.012 in", material, "60 lb"))
    assert found("strength for size", strong) == []


# ---- record lengths --------------------------------------------------------------------------


def record(tippet: str, guard: str = "10 in", *, asked: bool = True) -> Recipe:
    return recipe(
        section("5 ft", "0.024 in", knot="blood"),
        section(tippet, "0.015 in", knot="doubled blood"),
        section(guard, "0.028 in", "fluorocarbon"),
        fly="non-slip loop",
        record_lengths=asked,
    )


def test_a_class_tippet_is_measured_between_its_knots() -> None:
    assert found("class tippet", record("15 in")) == []
    assert found("class tippet", record("38.1 cm")) == []
    assert found("class tippet", record("14 7/8 in")) == [
        (2, "the tippet is 14 7/8 in between its knots, and the published least is 15 in")
    ]
    assert found("class tippet", record("14 to 20 in"))[0][0] == 2


def test_a_shock_tippet_is_measured_with_its_knots() -> None:
    # Doubled blood, 3 turns of 0.028 in above: 0.084 in; non-slip loop, 2 turns: 0.056 in.
    # 11.86 + 0.14 = 12.00 in.
    assert found("shock tippet", record("20 in", "11.86 in")) == []
    assert found("shock tippet", record("20 in", "12 in")) == [
        (3, "the bite guard is 12 1/8 in with its knots, and the published most is 12 in")
    ]
    assert found("shock tippet", record("20 in", "10 to 12 in"))[0][0] == 3


@pytest.mark.parametrize("rule", ["class tippet", "shock tippet"])
def test_record_lengths_are_checked_only_where_asked(rule: str) -> None:
    assert found(rule, record("10 in", "20 in"))
    assert found(rule, record("10 in", "20 in", asked=False)) == []


def test_this_years_rules_may_be_set_in_a_shop_file() -> None:
    newer = practice('[rules."class tippet"]\nlimit = "12 in"\n')
    assert found("class tippet", record("14 in"), newer) == []


# ---- reach -----------------------------------------------------------------------------------


def test_reach_adds_line_leader_and_rod() -> None:
    def reaching(length: str) -> Recipe:
        return recipe(section(length, "4X"), reach=("30 ft", "9 ft 6 in"))

    # 30 + 9 + 9 1/2 = 48 1/2 ft
    assert found("reach", reaching("9 ft")) == [
        (None, "30 ft of line, 9 ft of leader and 9 ft 6 in of rod reach 48 ft 6 in")
    ]
    assert found("reach", reaching("8 to 9 ft"))[0][1].endswith("reach 47 ft 6 in to 48 ft 6 in")
