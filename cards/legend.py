"""What a person needs to read a code's text by eye: a recipe and its text in, short lines out."""

import re
from collections.abc import Iterator
from itertools import pairwise

from cards.notation import codes_used
from cards.recipe import Recipe

_UNITS = re.compile(r":([A-Z]+)/([A-Z]+)/([A-Z]+):")
_MIXED = re.compile(r"\d\+\d+/\d")


def legend(recipe: Recipe, text: str) -> tuple[str, ...]:
    """Return only the lines that this recipe's text has use for."""
    return tuple(_lines(recipe, text))


def _lines(recipe: Recipe, text: str) -> Iterator[str]:
    yield "The code is this recipe as text, butt to fly:"
    yield "length*diameter*material*strength-knot"
    yield " ".join(_silent(recipe, text))
    codes = ", ".join(f"{code} {name}" for code, name in codes_used(recipe))
    if codes:
        yield f"{codes}."
    if any(len(section.length.plain.split(" to ")) > 1 for section in recipe.sections):
        yield "22-28: from 22 to 28."
    if _MIXED.search(text):
        yield "1+1/2: one and a half."
    if any(mark in text for mark in "$%"):
        yield "In words, + turns a letter's case and $ marks a sign."


def _silent(recipe: Recipe, text: str) -> Iterator[str]:
    """Yield what goes without saying in the text."""
    units = _UNITS.search(text)
    length, diameter, strength = units.groups() if units else ("IN", "IN", "LB")
    same = length == diameter
    yield f"In {length.lower()}{'' if same else ', ' + diameter.lower()} and {strength.lower()}."
    if any(above.material == below.material for above, below in pairwise(recipe.sections)):
        yield "No material: as above."
    if any(section.knot is None for section in recipe.sections[:-1]):
        yield "No knot: blood; over a big step or to fluorocarbon, triple surgeon's."
