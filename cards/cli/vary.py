"""`tagend vary`: a changed leader as a recipe file of its own."""

import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from typing import cast

import click

from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import load_chosen, load_practice, naming
from tagend.cards.cli.options import shop_option
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import NAME_MOST, Recipe, Variant
from tagend.cards.recipe.recipe_file import variant_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.variants.variant import joined_name, vary
from tagend.cards.words.variant_words import short_words
from tagend.layouts.base.faults import Fault, Refused, refused, under

_STRAND = '"DIAMETER MATERIAL [STRENGTH] [LENGTH]"'


@click.command("vary")
@click.argument("source", metavar="RECIPE")
@click.option("-o", "--output", metavar="OUT.toml", required=True, help="The file to write.")
@click.option("--stop-after", type=int, metavar="N", help="Leave out what is below section N.")
@click.option("--total", metavar="LENGTH", help="Scale it to this finished length.")
@click.option("--butt", metavar="LENGTH", help="Lengthen the butt and cut down the rest.")
@click.option("--tippet", metavar=_STRAND, help="Tie another tippet.")
@click.option("--guard", metavar=_STRAND, help="Add a bite guard at the end.")
@click.option("--replace", type=(int, str), multiple=True, metavar=f"N {_STRAND}",
              help="Tie section N of another strand; repeatable.")  # fmt: skip
@click.option("--line-weight", type=int, metavar="N", help="Name another fly line.")
@click.option("--use", metavar="TEXT", help="Say another use.")
@click.option("--variant", metavar="NAME", help="Begin with this variant of the recipe.")
@click.option("--name", metavar="NAME", help="Call it this, and not after what is changed.")
@shop_option
def command(
    source: str,
    output: str,
    variant: str | None,
    name: str | None,
    shop: str | None,
    **wishes: object,
) -> None:
    """Write a variant of RECIPE as a recipe file; comments and its own variants are not kept.

    A strand without a length is as long as what it replaces, and a tippet beside --stop-after is
    tied on below. Knots that don't suit the new strands are left to the rule.
    """
    if os.path.realpath(output) == os.path.realpath(source):
        raise refused("this is the recipe itself", "name another file", output)
    practice = load_practice(shop)
    change = _change(wishes, practice)
    if change is None and variant is None:
        raise click.UsageError("Nothing to change.")
    (recipe,) = load_chosen([source], practice, variant, variants=False)
    with naming(source), _as_options():
        varied = _varied(recipe, change, name, practice)
    write_whole(output, recipe_text(varied).encode())
    click.echo(f"wrote {output}: {varied.name}", err=True)


def _change(wishes: Mapping[str, object], practice: Practice) -> Variant | None:
    """Return what the options change, read as a [[variant]] table is."""
    keys = {key: wish for key, wish in wishes.items() if wish not in (None, ())}
    if not keys:
        return None
    if "replace" in keys:
        strands = cast(Sequence[tuple[int, str]], keys["replace"])
        keys["replace"] = {str(place): strand for place, strand in strands}
    with _as_options():
        return variant_of({"name": "varied", **keys}, practice)


def _varied(recipe: Recipe, change: Variant | None, name: str | None, practice: Practice) -> Recipe:
    varied = vary(recipe, change, practice) if change else recipe
    if name is not None:
        with under("name"):
            return replace(varied, name=plain_text(name, NAME_MOST))
    return replace(varied, name=joined_name(recipe, short_words(change))) if change else varied


@contextmanager
def _as_options() -> Iterator[None]:
    """Name options where a recipe file's keys are named: `--stop-after` for `stop_after`."""
    try:
        yield
    except Refused as error:
        raise Refused(*map(_of_option, error.faults)) from None


def _of_option(fault: Fault) -> Fault:
    where = fault.where.replace("_", "-").replace(", ", " ")
    return fault._replace(where=f"--{where}" if where else "")
