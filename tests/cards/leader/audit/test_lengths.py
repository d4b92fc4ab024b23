import pytest

from tagend.cards.leader.audit.lengths import LENGTH_RULES
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tests.told import in_english
from tests.written import PRACTICE, leader, recipe, section


def found(rule: str, written: Recipe, by: Practice = PRACTICE) -> list[tuple[int | None, str]]:
    of = leader(written, by)
    return [(f.section, in_english(f.says, of)) for f in LENGTH_RULES[rule](of, by.rules[rule])]


SOUND = recipe(
    section("4 ft", "0.017 in", "nylon", "23 lb"),
    section("2 ft", "0.013 in", "nylon", "13.5 lb"),
    section("20 in", "0.011 in", "nylon", "9.6 lb"),
    section("10 in", "0.024 in", "fluorocarbon", "49 lb"),
    total="8 1/2 ft",
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


# ---- slips -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("rule", "lengths", "says"),
    [
        ("leader length", ("24 in", "12 in"), None),  # 3 ft, the shortest in print
        ("leader length", ("18 ft", "6 ft"), None),
        ("leader length", ("1 ft", "1 ft"), "the leader is 24 in"),
        ("leader length", ("25 ft", "5 ft"), "the leader is 30 ft"),
        ("leader length", ("22 ft", "4 to 8 ft"), "the leader is 26 ft to 30 ft"),
        ("tippet length", ("9 ft", "8 in"), None),
        ("tippet length", ("9 ft", "7 ft"), None),
        ("tippet length", ("9 ft", "3 in"), "the tippet is 3 in"),
        ("tippet length", ("9 ft", "12 ft"), "the tippet is 12 ft"),
    ],
)
def test_lengths_that_nobody_fishes_are_asked_for(
    rule: str, lengths: tuple[str, str], says: str | None
) -> None:
    written = recipe(section(lengths[0], "0.010 in"), section(lengths[1], "0.009 in"))
    told = found(rule, written)
    assert len(told) == (1 if says else 0)
    assert all(says and words.startswith(f"{says}, and ") for _, words in told)


def test_a_leader_of_one_piece_has_no_tippet_to_measure() -> None:
    assert found("tippet length", recipe(section("12 ft", "4X"))) == []


# ---- reach -----------------------------------------------------------------------------------


def test_reach_adds_line_leader_and_rod() -> None:
    def reaching(length: str) -> Recipe:
        return recipe(section(length, "4X"), reach=("30 ft", "9 ft 6 in"))

    # 30 + 9 + 9 1/2 = 48 1/2 ft
    assert found("reach", reaching("9 ft")) == [
        (None, "30 ft of line, 9 ft of leader and 9 ft 6 in of rod reach 48 ft 6 in")
    ]
    assert found("reach", reaching("8 to 9 ft"))[0][1].endswith("reach 47 ft 6 in to 48 ft 6 in")
