"""A recipe back from the water in; the leaders of the book that hold it out."""

import sqlite3

from msgspec.structs import replace

from tagend.cards.book.leaders import BookLeader, leaders
from tagend.cards.code.notation import write_notation
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused


def holders(db: sqlite3.Connection, recipe: Recipe, practice: Practice) -> tuple[BookLeader, ...]:
    """Return the leaders of a label's recipe; of those tied on its day, where it says one.

    A label holds one leader without its variants, so the text of its code is what is compared; what
    the rule chose is not of it.
    """
    wanted = _code(recipe, practice)
    numbers = [
        row["id"]
        for row in db.execute("SELECT id, text FROM recipe").fetchall()
        if _code_of(row["text"], practice) == wanted
        for row in db.execute("SELECT id FROM leader WHERE recipe = ?", (row["id"],))
    ]
    found = leaders(db, numbers)
    return tuple(leader for leader in found if recipe.tied in (None, leader.tied))


def held_in(db: sqlite3.Connection, recipe: Recipe, practice: Practice) -> dict[int, list[int]]:
    """Return the numbers of the leaders that hold a label's recipe, by their batches."""
    batches: dict[int, list[int]] = {}
    for leader in holders(db, recipe, practice):
        batches.setdefault(leader.batch, []).append(leader.number)
    return batches


def _code_of(text: str, practice: Practice) -> str | None:
    """Return the code of a recipe in the book; None where this practice lacks one of its knots."""
    try:
        return _code(read_recipe(text.encode(), practice), practice)
    except Refused:
        return None


def _code(recipe: Recipe, practice: Practice) -> str:
    return write_notation(replace(recipe, tied=None), practice.knots, practice.materials)
