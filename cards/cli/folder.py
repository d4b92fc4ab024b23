"""Recipes into the files of a folder, each under a name of its own."""

import os
from collections.abc import Sequence
from itertools import chain, count

import click

from cards.cli.files import write_whole
from cards.errors import refused
from cards.recipe import Recipe
from cards.recipe_text import file_name, recipe_text


def write_each(recipes: Sequence[Recipe], folder: str) -> None:
    """Write each recipe as a recipe file of its name."""
    if not os.path.isdir(folder):
        raise refused("this is not a folder", "make it first, or name another", folder)
    written: set[str] = set()
    for recipe in recipes:
        name = _unlike(written, file_name(recipe.name))
        write_whole(os.path.join(folder, name), recipe_text(recipe).encode())
        written.add(name)
    number = "1 recipe" if len(recipes) == 1 else f"{len(recipes)} recipes"
    click.echo(f"wrote {number} into {folder}", err=True)


def _unlike(written: set[str], name: str) -> str:
    """Return the name, numbered where another recipe has it: `sandbar-eight-2.toml`."""
    stem = name.removesuffix(".toml")
    numbered = (f"{stem}-{number}.toml" for number in count(2))
    return next(choice for choice in chain([name], numbered) if choice not in written)
