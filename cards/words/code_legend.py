"""What a person needs to read a code's text by eye: a recipe and its text in, short lines out."""

import re
from collections.abc import Iterator
from itertools import pairwise

from tagend.cards.code.notation import codes_used
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording

_UNITS = re.compile(r":([A-Z]+)/([A-Z]+)/([A-Z]+):")
_CHOSEN = re.compile(r":BUTT \+[A-Z%]|:[0-9.][^:]*\+[A-Z%]")
_MIXED = re.compile(r"\d\+\d+/\d")


def legend(recipe: Recipe, text: str, wording: Wording) -> Iterator[str]:
    """Yield only the lines that the text has use for of this recipe, which names every knot."""
    yield wording.say("code")
    yield wording.say("code_order").replace("-", "\u2011")  # its hyphen is a sign of the code
    yield " ".join(_silent(recipe, text, wording))
    if codes := key_of_codes(recipe, wording):
        yield f"{codes}."
    if _CHOSEN.search(text):
        yield wording.say("code_chosen")
    if any(len(section.length.plain.split(" to ")) > 1 for section in recipe.sections):
        yield wording.say("code_range")
    if _MIXED.search(text):
        yield wording.say("code_mixed")
    if any(mark in text for mark in "$%"):
        yield wording.say("code_words")


def key_of_codes(recipe: Recipe, wording: Wording) -> str:
    """Return what each code stands for, of a recipe that names every knot: `B blood, N nylon`."""
    return ", ".join(f"{code}\u00a0{_name(name, wording)}" for code, name in codes_used(recipe))


def _name(name: str, wording: Wording) -> str:
    """Return what a code stands for: a knot or a material."""
    return wording.material(wording.knot(name))


def _silent(recipe: Recipe, text: str, wording: Wording) -> Iterator[str]:
    """Yield what goes without saying in the text."""
    units = _UNITS.search(text)
    length, diameter, strength = units.groups() if units else ("IN", "IN", "LB")
    same = length == diameter
    lengths = length.lower() + ("" if same else f", {diameter.lower()}")
    yield wording.say("code_units", lengths=lengths, strength=strength.lower())
    *joined, last = recipe.sections
    materials = any(above.material == below.material for above, below in pairwise((*joined, last)))
    knots = any(above.knot == below.knot for above, below in pairwise(joined))
    if materials or knots:
        yield wording.say("code_as_above")
