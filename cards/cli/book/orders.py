"""What a batch is to be: words such as `sandbar.toml=20` in, so many leaders of each recipe out."""

import sqlite3
from collections.abc import Sequence

import click

from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.book.naming import numbers
from tagend.cards.book.orders import wanted_of
from tagend.cards.cli.files import load_recipes
from tagend.cards.cli.heed import heed
from tagend.cards.cli.spoken import spoken
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.shopping import shortage_line
from tagend.layouts.base.faults import Fault, Refused, refused

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
    return [(recipe, count) for recipe, (_, count) in zip(recipes, named, strict=True)]


def orders_of(
    asked: Sequence[tuple[Recipe, int]],
    again: Sequence[str],
    db: sqlite3.Connection,
    practice: Practice,
    *,
    anyway: bool,
) -> list[Order]:
    """Return the orders of a batch, one a recipe. What is wrong is told; see `heed`."""
    wanted = wanted_of(asked, numbers(again), db, practice)
    if not wanted:
        raise click.UsageError("Name recipes with how many of each, such as sandbar.toml=20.")
    heed([each.sheet for each in wanted], anyway=anyway)
    return [each.order for each in wanted]


def refuse_shortages(batch: Batch) -> None:
    """Raise `Refused` with all that is to buy, where the spools lack line."""
    if batch.shortages:
        raise Refused(
            *(
                Fault("", f"to buy: {shortage_line(lack, spoken())}", "nothing was tied or drawn")
                for lack in batch.shortages
            )
        )


def _named(word: str) -> tuple[str, int]:
    name, _, count = word.rpartition("=")
    if name and count.isdecimal() and 1 <= int(count[:9]) <= COUNT_MOST:
        return name, int(count)
    instead = f"write a file and a number from 1 to {COUNT_MOST}, such as {word.split('=')[0]}=20"
    raise refused(f"{word!r} does not say how many", instead)
