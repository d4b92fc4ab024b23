import pytest

from tagend.cards.recipe.recipe import Recipe
from tagend.cards.variants.variant_strands import with_fitting_knots
from tests.written import PRACTICE, recipe, section

BEFORE = recipe(
    section("36 in", "0.021 in", knot="blood"),
    section("24 in", "0.019 in", knot="blood"),
    section("24 in", "0.017 in"),
    butt="perfection loop",
    fly="improved clinch",
)


def named(changed: Recipe, before: Recipe = BEFORE) -> list[str | None]:
    """Return the knots that the changed recipe still names: joints, then butt and fly."""
    fitting = with_fitting_knots(changed, before, PRACTICE)
    return [*(part.knot for part in fitting.sections), fitting.butt.end, fitting.fly.knot]


def changed(*diameters: str, material: str = "nylon", knot: str = "blood") -> Recipe:
    upper, lower, last = diameters
    return recipe(
        section("36 in", upper, knot="blood"),
        section("24 in", lower, knot=knot),
        section("24 in", last, material),
        butt="perfection loop",
        fly="improved clinch",
    )


def test_knots_that_suit_stay() -> None:
    again = changed("0.018 in", "0.016 in", "0.014 in")
    assert named(again) == ["blood", "blood", None, "perfection loop", "improved clinch"]


def test_a_joint_over_too_big_a_step_is_left_to_the_rule() -> None:
    # 0.019 / 0.013 = 1.46 is within 1.45 but for what print rounds off; 0.019 / 0.012 = 1.58 is not
    assert named(changed("0.021 in", "0.019 in", "0.013 in"))[:2] == ["blood", "blood"]
    assert named(changed("0.021 in", "0.019 in", "0.012 in"))[:2] == ["blood", None]


@pytest.mark.parametrize("knot", ["albright", "triple surgeon's", "ring joint"])
def test_a_knot_for_a_big_step_stays_over_one(knot: str) -> None:
    assert named(changed("0.021 in", "0.019 in", "0.012 in", knot=knot))[1] == knot


def test_a_joint_of_nylon_to_fluorocarbon_is_left_to_the_rule() -> None:
    again = changed("0.021 in", "0.019 in", "0.017 in", material="fluorocarbon")
    assert named(again)[:2] == ["blood", None]


def test_wire_takes_neither_joint_nor_fly_knot_of_nylon() -> None:
    again = changed("0.021 in", "0.019 in", "0.017 in", material="wire")
    assert named(again) == ["blood", None, None, "perfection loop", None]


def test_a_knot_that_its_recipe_chose_for_these_strands_stays() -> None:
    unwise = changed("0.021 in", "0.013 in", "0.011 in")
    assert named(unwise, before=unwise)[:2] == ["blood", "blood"]


def test_a_loop_for_tapered_butts_goes_when_the_leader_becomes_level() -> None:
    level = recipe(section("36 in", "0.021 in"), butt="perfection loop", loop="1 in")
    assert named(level) == [None, None, None]
    assert named(level, before=level) == [None, "perfection loop", None]


@pytest.mark.parametrize("end", ["none", None])
def test_bare_ends_stay_bare(end: str | None) -> None:
    level = recipe(section("36 in", "0.021 in", "wire"), butt=end, fly=end)
    assert named(level) == [None, end, end]


def test_a_fly_knot_that_no_longer_draws_up_is_left_to_the_rule() -> None:
    # Above 0.015 in an improved clinch is not drawn up: the knots file.
    assert named(changed("0.022 in", "0.020 in", "0.018 in"))[-1] is None
