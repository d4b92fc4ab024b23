"""What a person needs to read a code's text by eye: a recipe in, at most three short lines out."""

from collections.abc import Iterator

from tagend.cards.code.notation import codes_used
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording


def legend(recipe: Recipe, wording: Wording) -> Iterator[str]:
    """Yield what the code is, how its text reads, and what its letters stand for."""
    yield wording.say("code")
    yield how_it_reads(recipe, wording)
    if codes := key_of_codes(recipe, wording):
        yield codes.replace("\u00a0", " ")  # a column may be narrower than a code and its word


def how_it_reads(recipe: Recipe, wording: Wording) -> str:
    """Return the order of a section's fields, and what goes without saying in this text."""
    said = [wording.say("code_order")]
    if any(section.diameter.unit == "in" for section in recipe.sections):
        said.append(wording.say("code_thou", diameter=wording.number("0.023 in")))
    said.append(wording.say("code_rest"))
    if recipe.lengths == "cut":
        said.append(wording.say("code_cut"))
    return "; ".join(said)


def key_of_codes(recipe: Recipe, wording: Wording) -> str:
    """Return what each code stands for, of a recipe that names every knot: `B blood, N nylon`.

    The end at the butt is told with its loop, which a text leaves out where it is the usual one.
    """
    loop = recipe.butt.loop
    said = [f"{code}\u00a0{_name(name, wording)}" for code, name in codes_used(recipe)]
    if loop and recipe.butt.end and said:
        said[0] += f" {wording.number(loop.plain)}"
    return ", ".join(said)


def _name(name: str, wording: Wording) -> str:
    """Return what a code stands for: a knot or a material."""
    return wording.material(wording.knot(name))
