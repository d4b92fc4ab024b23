"""What a person needs to read a code's text by eye: a recipe in, at most four short lines out."""

from collections.abc import Iterator

from tagend.cards.code.notation import codes_used
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording


def legend(recipe: Recipe, wording: Wording) -> Iterator[str]:
    """Yield what the code is, the order of its fields, what its letters stand for, and the rest."""
    yield wording.say("code")
    order, rest = how_it_reads(recipe, wording)
    yield order
    if codes := key_of_codes(recipe, wording):
        yield codes.replace("\u00a0", " ")  # a column may be narrower than a code and its word
    yield rest


def how_it_reads(recipe: Recipe, wording: Wording) -> tuple[str, str]:
    """Return the order of a section's fields, and what goes without saying in this text."""
    said = [wording.say("code_rest")]
    if any(section.diameter.unit == "in" for section in recipe.sections):
        said.insert(0, wording.say("code_thou", diameter=wording.number("0.023 in")))
    if recipe.lengths == "cut":
        said.append(wording.say("code_cut"))
    return wording.say("code_order"), "; ".join(said)


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
