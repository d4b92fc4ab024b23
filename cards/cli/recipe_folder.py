"""Recipes into the files of a folder, each under a name of its own."""

import os
from collections.abc import Container, Sequence
from itertools import chain, count

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli.disk import make_folder
from tagend.cards.cli.output import write_outputs
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.layouts.base.faults import refused


def write_each(recipes: Sequence[Recipe], folder: str, *, replace: bool) -> None:
    """Write each recipe as a recipe file of its name; a folder that is not there is made."""
    if folder.lower().endswith(".toml"):
        raise refused("this is no folder, and there are several recipes", "name a folder", folder)
    make_folder(folder)
    texts: dict[str, bytes] = {}
    for recipe in recipes:
        name = _unlike(texts, os.path.join(folder, file_name(recipe.name)))
        texts[name] = recipe_text(recipe).encode()
    write_outputs(texts, replace=replace)
    click.echo(f"wrote {counted(len(recipes), 'recipe')} into {folder}", err=True)


def _unlike(written: Container[str], name: str) -> str:
    """Return the name, numbered where another recipe has it: `sandbar-eight-2.toml`."""
    stem = name.removesuffix(".toml")
    numbered = (f"{stem}-{number}.toml" for number in count(2))
    return next(choice for choice in chain([name], numbered) if choice not in written)
