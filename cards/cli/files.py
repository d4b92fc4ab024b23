"""Files that commands read: names in, recipes and practice out; faults name the file."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import AbstractContextManager
from typing import TYPE_CHECKING, TypeAlias

import click

from tagend.cards.base.toml_file import read_toml
from tagend.cards.cli.spoken import note_language
from tagend.cards.disk.disk import read_bytes
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.layouts.base.faults import Fault, noting, refuse_any, under

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack
    from tagend.cards.printing.job import Job

Tables: TypeAlias = Mapping[str, object]  # of a recipe file
Fill: TypeAlias = Callable[[Tables], Tables]  # what a file leaves open, before it is checked


def load_rack(name: str | None, practice: Practice) -> "Rack | None":
    """Return the spools of a rack file; without one, None."""
    if name is None:
        return None
    from tagend.cards.practice.rack_file import read_rack

    with naming(name):
        return read_rack(read_bytes(name), practice)


def load_shop(name: str | None) -> Shop:
    """Return what the shop file says; without one, nothing."""
    if name is None:
        return Shop()
    from tagend.cards.disk.shop_file_at import shop_file_at

    with naming(name):
        shop = shop_file_at(name)
        note_language(shop)
    return shop


def load_job(name: str | None, *, logo: bool = False) -> "Job":
    """Return the job that the shop file asks for, with its logo where one is printed."""
    from tagend.cards.printing.job import job_of

    shop = load_shop(name)
    if name is None:
        return job_of(shop)
    from tagend.cards.disk.shop_file_at import logo_of

    with naming(name):
        return job_of(shop, logo_of(shop) if logo else None)


def load_practice(shop: str | None) -> Practice:
    """Return common practice, with what the shop file changes of it."""
    return practice_of(load_shop(shop))


def load_recipes(
    names: Sequence[str], practice: Practice, fill: Fill = lambda tables: tables
) -> tuple[Recipe, ...]:
    """Return the recipes in files; raises `Refused` with the faults of all of them.

    Their tables are filled in before they are checked.
    """
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for name in names:
        with noting(faults), naming(name):
            recipes.append(recipe_of(fill(read_toml(read_bytes(name))), practice))
    refuse_any(faults)
    return tuple(recipes)


def load_chosen(
    names: Sequence[str],
    practice: Practice,
    variant: str | None,
    variants: bool,
    fill: Fill = lambda tables: tables,
) -> tuple[Recipe, ...]:
    """Return the recipes in files, or those of their variants that are asked for."""
    if variant is not None and variants:
        raise click.UsageError("Give --variant or --variants, not both.")
    recipes = load_recipes(names, practice, fill)
    if variant is None and not variants:
        return recipes
    from tagend.cards.variants.variant import variant_called, with_variants

    chosen: list[Recipe] = []
    faults: list[Fault] = []
    for name, recipe in zip(names, recipes, strict=True):
        with noting(faults), naming(name):
            if variant is not None:
                chosen.append(variant_called(variant, recipe, practice))
            else:
                chosen.extend(with_variants(recipe, practice))
    refuse_any(faults)
    return tuple(chosen)


def naming(name: str) -> AbstractContextManager[None]:
    """Put the file's name before every fault found inside."""
    return under("standard input" if name == "-" else name, ": ")
