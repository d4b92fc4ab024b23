import pytest
from hypothesis import given

from cards.errors import Refused
from cards.knot_file import load_knots
from cards.materials import load_materials
from cards.notation import LONGEST, read_notation, write_notation
from cards.recipe import Recipe
from tests.strategies import recipes

KNOTS, MATERIALS = load_knots(), load_materials()


@given(recipes)
def test_every_recipe_comes_back_from_its_text(recipe: Recipe) -> None:
    try:
        text = write_notation(recipe, KNOTS, MATERIALS)
    except Refused as refusal:
        assert f"at most {LONGEST}" in str(refusal)
        return
    assert read_notation(text, KNOTS, MATERIALS) == recipe
