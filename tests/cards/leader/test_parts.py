import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.parts import fly_end_mm, is_level, parts
from tagend.cards.recipe.recipe import Part, Recipe
from tests.written import PRACTICE, leader, recipe, section


def guessed(written: Recipe) -> tuple[Part, ...]:
    return parts(written, PRACTICE.materials)


BUTT = section("30 in", "0.023 in")
TAPER = section("12 in", "0.017 in")
THIN = section("20 in", "0.010 in")
GUARD = section("6 in", "0.024 in", "fluorocarbon")


def test_butt_tapers_and_tippet_are_guessed_from_their_places() -> None:
    assert guessed(recipe(BUTT, TAPER, TAPER, THIN)) == ("butt", "taper", "taper", "tippet")


def test_a_leader_of_one_piece_is_all_tippet() -> None:
    assert guessed(recipe(THIN)) == ("tippet",)


def test_a_thicker_last_piece_is_a_bite_guard_and_the_tippet_is_above_it() -> None:
    assert guessed(recipe(BUTT, TAPER, THIN, GUARD)) == ("butt", "taper", "tippet", "bite guard")


def test_wire_at_the_end_is_a_bite_guard_though_it_is_thinner() -> None:
    wire = section("6 in", "0.009 in", "wire")
    assert guessed(recipe(BUTT, THIN, wire)) == ("butt", "tippet", "bite guard")


def test_a_guard_is_held_against_the_thin_end_of_a_taper() -> None:
    knotless = section("9 ft", "0.024 in", tapers_to="0.010 in")
    assert guessed(recipe(knotless, section("6 in", "0.020 in"))) == ("tippet", "bite guard")


def test_a_named_part_is_kept() -> None:
    sighter = section("12 in", "0.018 in", part="sighter")
    assert guessed(recipe(BUTT, sighter, THIN)) == ("butt", "sighter", "tippet")


def test_a_named_tippet_leaves_bite_guards_below_it() -> None:
    tippet = section("20 in", "0.010 in", part="tippet")
    assert guessed(recipe(BUTT, tippet, TAPER, GUARD)) == (
        "butt",
        "tippet",
        "bite guard",
        "bite guard",
    )


def test_of_two_named_tippets_the_lower_one_counts() -> None:
    tippet = section("20 in", "0.010 in", part="tippet")
    assert guessed(recipe(BUTT, tippet, TAPER, tippet, GUARD)) == (
        "butt",
        "tippet",
        "taper",
        "tippet",
        "bite guard",
    )
    assert guessed(recipe(BUTT, tippet, tippet, TAPER))[3] == "bite guard"
    assert leader(recipe(BUTT, tippet, TAPER, tippet, GUARD)).tippet.place == 4


def test_a_named_bite_guard_may_be_as_thin_as_the_tippet() -> None:
    guard = section("6 in", "0.010 in", "fluorocarbon", part="bite guard")
    assert guessed(recipe(BUTT, THIN, guard)) == ("butt", "tippet", "bite guard")


def test_a_last_piece_that_is_named_otherwise_is_no_guard() -> None:
    end = section("20 in", "0.024 in", part="taper")
    assert guessed(recipe(BUTT, THIN, end)) == ("butt", "taper", "taper")


@pytest.mark.parametrize(
    ("written", "level"),
    [
        (recipe(THIN), True),
        (recipe(THIN, THIN), True),
        (recipe(BUTT, THIN), False),
        (recipe(section("9 ft", "0.024 in", tapers_to="0.010 in")), False),
        # 4X and 0.007 in are one diameter, whatever it is called.
        (recipe(section("6 ft", "4X"), section("3 ft", "0.007 in")), True),
    ],
)
def test_a_level_leader_has_one_diameter(written: Recipe, level: bool) -> None:
    assert is_level(written) is level


def test_the_fly_end_of_a_knotless_taper_is_its_thin_end() -> None:
    knotless = section("9 ft", "0.024 in", tapers_to="0.010 in")
    assert fly_end_mm(knotless) == parse_diameter("0.010 in").mm
    assert fly_end_mm(THIN) == THIN.diameter.mm
