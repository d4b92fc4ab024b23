"""From a code's text alone the same leader is tied: what a hand reads is what was worked out."""

import pytest

from tagend.cards.leader.naming import all_named
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tests.leaders import read, write
from tests.outside.code_by_hand import read_by_hand
from tests.plausible import plausible_recipes
from tests.tree import SAMPLES
from tests.written import PRACTICE, leader, recipe, section

NAMES = "breakwater-ten gravel-five hasty-seven millrace-three reedbed-six sandbar-eight"
SHIPPED = [read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE) for name in NAMES.split()]
ODD = [
    recipe(section("9 ft", "0.023 in", tapers_to="4X", bought=True), section("20 in", "5X")),
    recipe(section("1.5 m", "0.40 mm", strength="7 kg"), section("45 to 60 cm", "0.2 mm")),
    recipe(section("30 1/2 in", "20 thou"), section("12 in", "0.018 in", "wire", "27 lb")),
    recipe(section("46 in", "0.023 in", "hard nylon"), section("30 in", "8 thou"), loop="1 in"),
    recipe(
        section("7 ft 6 in", "1X", knot="uni to uni"), section("20 in", "0.008 in"), butt="none"
    ),
]


@pytest.mark.parametrize("of", [*SHIPPED, *ODD, *plausible_recipes(100, seed=3)])
def test_hands_read_the_leader_that_was_worked_out(of: Recipe) -> None:
    made = leader(of)
    text = write(of, all_named(made))
    told = read_by_hand(text)
    assert told.lengths_mm == [(s.length.low.mm, s.length.high.mm) for s in of.sections]
    assert told.diameters_mm == [piece.section.diameter.mm for piece in made.pieces]
    assert told.materials == [piece.material.name for piece in made.pieces]
    assert told.knots[:-1] == [joint.knot.name for joint in made.joints]
    for end, name in ((made.butt, told.butt), (made.fly, told.knots[-1])):
        assert name == (end.knot.name if end.knot else None)
    assert told.loop_mm == (of.butt.loop.mm if of.butt.loop else None)
    assert read(text).sections == of.sections
