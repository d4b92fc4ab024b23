"""What a batch is to be: recipes with counts, and leaders to tie once more, in; orders out."""

import sqlite3
from collections import Counter
from collections.abc import Callable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.toml_file import read_toml
from tagend.cards.batches.batch import Order
from tagend.cards.book.tying import recipe_texts
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.layouts.base.faults import Refused, under


class Wanted(Struct, frozen=True):
    """So many of one leader, with what is found in it."""

    sheet: Worksheet
    count: int

    @property
    def order(self) -> Order:
        return Order(self.sheet.leader, self.count)


def wanted_of(
    asked: Sequence[tuple[Recipe, int]],
    again: Sequence[int],
    db: sqlite3.Connection,
    practice: Practice,
) -> list[Wanted]:
    """Return what a batch is to be, one a recipe; `again` are leaders of which one more is tied.

    Raises `Refused` for a recipe that this practice cannot read, and a number the book has not.
    """
    counts = Counter[str]()  # by text: one recipe in two files is one order
    for recipe, count in asked:
        counts[recipe_text(replace(recipe, tied=None))] += count
    counts.update(recipe_texts(db, again) if again else ())
    return [Wanted(_sheet_of(text, practice), count) for text, count in counts.items()]


def leader_reader(practice: Practice) -> Callable[[str], Leader]:
    """Return what works out the leader of a recipe's text."""
    return lambda text: _sheet_of(text, practice).leader


def _sheet_of(text: str, practice: Practice) -> Worksheet:
    """Return the worksheet of a recipe's text. Raises `Refused`, for a knot of another shop."""
    with under("a recipe of the book"):
        try:
            return worksheet(recipe_of(read_toml(text.encode()), practice), practice)
        except Refused as error:  # what a person wrote was right once
            instead = "name the shop file with --shop that it was tied with"
            raise Refused(*(fault._replace(instead=instead) for fault in error.faults)) from None
