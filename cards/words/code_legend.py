"""What a person needs to read a code's text by eye: a recipe in, at most three short lines out."""

from collections.abc import Iterator

from tagend.cards.code.notation import codes_used
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording


def legend(recipe: Recipe, wording: Wording) -> Iterator[str]:
    """Yield what the code is, the order of its fields, and what its letters stand for."""
    yield wording.say("code")
    yield wording.say("code_order")
    if codes := key_of_codes(recipe, wording):
        yield codes.replace("\u00a0", " ")  # a column may be narrower than a code and its word


def key_of_codes(recipe: Recipe, wording: Wording) -> str:
    """Return what each code stands for, of a recipe that names every knot: `B blood, N nylon`."""
    return ", ".join(f"{code}\u00a0{_name(name, wording)}" for code, name in codes_used(recipe))


def _name(name: str, wording: Wording) -> str:
    """Return what a code stands for: a knot or a material."""
    return wording.material(wording.knot(name))
