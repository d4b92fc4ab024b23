"""What a batch is to be: words such as `sandbar.toml=20` in, so many leaders of each recipe out."""

import sqlite3
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

import click

from tagend.cards.base.toml_file import read_toml
from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.book.naming import numbers
from tagend.cards.book.tying import recipe_texts
from tagend.cards.cli.files import load_recipes
from tagend.cards.cli.heed import heed
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.shopping import shortage_line
from tagend.layouts.base.faults import Fault, Refused, refused, under

orders_argument = click.argument("words", metavar="[RECIPE=COUNT]...", nargs=-1)
again_option = click.option(
    "--again",
    multiple=True,
    metavar="NUMBERS",
    help="One more of each of these leaders of the book, such as 12-15.",
)


def load_orders(words: Sequence[str], practice: Practice) -> list[tuple[Recipe, int]]:
    """Return the recipes of files with their counts."""
    named = [_named(word) for word in words]
    recipes = load_recipes([name for name, _ in named], practice)
    return [
        (replace(recipe, tied=None), count)
        for recipe, (_, count) in zip(recipes, named, strict=True)
    ]


def orders_of(
    asked: Sequence[tuple[Recipe, int]],
    again: Sequence[str],
    db: sqlite3.Connection,
    practice: Practice,
    *,
    anyway: bool,
) -> list[Order]:
    """Return the orders of a batch, one a recipe. What is wrong is told; see `heed`."""
    counts = Counter[str]()  # by text: one recipe in two files is one order
    for recipe, count in asked:
        counts[recipe_text(recipe)] += count
    counts.update(recipe_texts(db, numbers(again)) if again else ())
    if not counts:
        raise click.UsageError("Name recipes with how many of each, such as sandbar.toml=20.")
    sheets = [sheet_of(text, practice) for text in counts]
    heed(sheets, anyway=anyway)
    return [
        Order(sheet.leader, count) for sheet, count in zip(sheets, counts.values(), strict=True)
    ]


def leader_reader(practice: Practice) -> Callable[[str], Leader]:
    """Return what works out the leader of a recipe's text."""
    return lambda text: sheet_of(text, practice).leader


def sheet_of(text: str, practice: Practice) -> Worksheet:
    """Return the worksheet of a recipe's text. Raises `Refused`, for a knot of another shop."""
    with under("a recipe of the book"):
        try:
            return worksheet(recipe_of(read_toml(text.encode()), practice), practice)
        except Refused as error:  # what a person wrote was right once
            instead = "name the shop file with --shop that it was tied with"
            raise Refused(*(fault._replace(instead=instead) for fault in error.faults)) from None


def refuse_shortages(batch: Batch) -> None:
    """Raise `Refused` with all that is to buy, where the spools lack line."""
    if batch.shortages:
        raise Refused(
            *(
                Fault("", f"to buy: {shortage_line(lack, ENGLISH)}", "nothing was tied or drawn")
                for lack in batch.shortages
            )
        )


def _named(word: str) -> tuple[str, int]:
    name, _, count = word.rpartition("=")
    if name and count.isdecimal() and 1 <= int(count[:9]) <= COUNT_MOST:
        return name, int(count)
    instead = f"write a file and a number from 1 to {COUNT_MOST}, such as {word.split('=')[0]}=20"
    raise refused(f"{word!r} does not say how many", instead)
