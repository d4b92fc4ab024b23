"""A recipe in; the code that holds it out, proven to read back."""

from tagend.cards.code.notation import write_notation
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.codes.code import Level, symbol
from tagend.layouts.codes.code_proof import proven
from tagend.layouts.paper.face import Symbol


def code_of(recipe: Recipe, practice: Practice, level: Level = "M") -> Symbol:
    """Return the symbol of a recipe's notation; raises `NotProven` where it does not read back."""
    return proven(symbol(write_notation(recipe, practice.knots, practice.materials), level))
