from statistics import quantiles

from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tests.plausible import plausible_recipes

KNOTS, MATERIALS = load_knots(), load_materials()


def test_nine_tenths_of_plausible_recipes_fit_the_sixth_version() -> None:
    lengths = [len(write_notation(recipe, KNOTS, MATERIALS)) for recipe in plausible_recipes(1000)]
    # Version 6 at level M holds 154 characters: ISO/IEC 18004.
    assert quantiles(lengths, n=10)[-1] <= 154


def test_plausible_recipes_come_back_and_are_the_same_every_time() -> None:
    recipes = list(plausible_recipes(200, seed=5))
    assert recipes == list(plausible_recipes(200, seed=5))
    for recipe in recipes:
        assert read_notation(write_notation(recipe, KNOTS, MATERIALS), KNOTS, MATERIALS) == recipe
