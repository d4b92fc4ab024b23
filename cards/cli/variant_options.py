"""The options that choose among a recipe's variants: recipe files in, the chosen recipes out."""

from collections.abc import Callable, Sequence
from typing import TypeVar

import click

from tagend.cards.cli.files import load_recipes, naming
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Fault, noting, refuse_any

F = TypeVar("F", bound=Callable[..., object])


def variant_options(command: F) -> F:
    """Give a command its --variant and --variants options."""
    one = click.option("--variant", metavar="NAME", help="This variant of each recipe instead.")
    every = click.option("--variants", is_flag=True, help="Each recipe and all its variants.")
    return one(every(command))


def load_chosen(
    names: Sequence[str], practice: Practice, variant: str | None, variants: bool
) -> tuple[Recipe, ...]:
    """Return the recipes in files, or those of their variants that are asked for."""
    if variant is not None and variants:
        raise click.UsageError(
            "Give --variant or --variants, not both.", click.get_current_context()
        )
    recipes = load_recipes(names, practice)
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
