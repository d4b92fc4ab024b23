"""Recipes into the files of a folder, each under a name of its own."""

import os
from collections import defaultdict
from collections.abc import Container, Iterator, Mapping, Sequence
from itertools import count

from tagend.cards.base.plural import counted
from tagend.cards.cli.output import named_file, tell_written, write_outputs
from tagend.cards.disk.disk import make_folder
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.layouts.base.faults import refused


def write_each(recipes: Sequence[Recipe], folder: str, *, replace: bool) -> None:
    """Write each recipe as a recipe file of its name; a folder that is not there is made."""
    named_file(folder)
    if folder.lower().endswith(".toml"):
        raise refused("this is no folder, and there are several recipes", "name a folder", folder)
    make_folder(folder)
    texts: dict[str, bytes] = {}
    alike: defaultdict[str, Iterator[int]] = defaultdict(lambda: count(2))
    for recipe in recipes:
        name = _unlike(texts, os.path.join(folder, file_name(recipe.name)), alike)
        texts[name] = recipe_text(recipe).encode()
    write_outputs(texts, replace=replace)
    tell_written(f"{counted(len(recipes), 'recipe')} into {folder}")


def _unlike(written: Container[str], name: str, numbers: Mapping[str, Iterator[int]]) -> str:
    """Return the name, numbered where another recipe has it: `sandbar-eight-2.toml`."""
    stem = name.removesuffix(".toml")
    while name in written:
        name = f"{stem}-{next(numbers[stem])}.toml"
    return name
