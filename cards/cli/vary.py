"""`tagend vary`: a changed leader as a recipe file of its own."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import cast

import click
from msgspec.structs import replace as changed

from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.completion import files
from tagend.cards.cli.files import Tables, load_chosen, load_practice, load_rack, naming
from tagend.cards.cli.heed import tell
from tagend.cards.cli.options import replace_option, shop_option
from tagend.cards.cli.output import called, check_output, tell_written, write_output
from tagend.cards.cli.vary_lines import beyond_lines
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.recipe.recipe import NAME_MOST, Recipe, Variant
from tagend.cards.recipe.recipe_file import variant_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.recipe.strand import parse_strand_by_strength
from tagend.cards.variants.by_strength import spool_by_strength, with_diameters
from tagend.cards.variants.variant import joined_name, vary
from tagend.cards.words.variant_words import short_words
from tagend.layouts.base.faults import Fault, Refused, refused, under

_STRAND = '"DIAMETER MATERIAL [STRENGTH] [LENGTH]"'
_STRANDS = ("tippet", "guard")


@click.command("vary")
@click.argument("source", metavar="RECIPE", shell_complete=files)
@click.option("-o", "--output", metavar="OUT.toml", required=True, help="The file to write.")
@click.option("--rack", metavar="FILE", help="String it again from the spools of your rack file.")
@click.option("--stop-after", type=int, metavar="N", help="Leave out what is below section N.")
@click.option("--total", metavar="LENGTH", help="Scale it to this finished length.")
@click.option("--butt", metavar="LENGTH", help="Lengthen the butt and cut down the taper.")
@click.option("--tippet", metavar=_STRAND, help="Tie another tippet.")
@click.option("--guard", metavar=_STRAND, help="Add a bite guard at the end.")
@click.option("--restring", type=(int, str), multiple=True, metavar=f"N {_STRAND}",
              help="Tie section N of another strand; repeatable.")  # fmt: skip
@click.option("--line-weight", type=int, metavar="N", help="Name another fly line.")
@click.option("--use", metavar="TEXT", help="Say another use.")
@click.option("--variant", metavar="NAME", help="Begin with this variant of the recipe.")
@click.option("--name", metavar="NAME", help="Call it this, and not after what is changed.")
@replace_option
@shop_option
def command(
    source: str,
    output: str,
    rack: str | None,
    variant: str | None,
    name: str | None,
    replace: bool,
    shop: str | None,
    **wishes: object,
) -> None:
    """Write a variant of RECIPE as a recipe file; comments and its own variants are not kept.

    A strand without a length is as long as what it replaces, and a tippet beside --stop-after is
    tied on below. Knots that don't suit the new strands are left to the rule. With --rack each
    section takes the spool that keeps the taper best, and a strand may be named by its strength
    alone, such as "30 lb fluorocarbon 12 in"; so may the sections of RECIPE, which then need no
    diameter. What else is changed, and what is wrong with the variant, is told on standard error.
    """
    practice = load_practice(shop)
    spools = load_rack(rack, practice)
    change = _change(wishes, spools, practice)
    if change == _NOTHING and variant is None and rack is None:
        raise click.UsageError("Nothing to change.")

    def fill(tables: Tables) -> Tables:
        return tables if spools is None else with_diameters(tables, spools, practice)

    (recipe,) = load_chosen([source], practice, variant, variants=False, fill=fill)
    check_output(output, replace=replace)
    with naming(source), _as_options():
        varied = _varied(recipe, change, name, spools, practice)
    for line in beyond_lines(recipe, change, varied, practice):
        click.echo(line, err=True)
    tell([worksheet(varied, practice)])
    write_output(output, recipe_text(varied).encode(), replace=replace)
    tell_written(f"{called(output)}: {varied.name}")


_NOTHING = Variant(name="varied")


def _change(wishes: Mapping[str, object], rack: Rack | None, practice: Practice) -> Variant:
    """Return what the options change, read as a [[variant]] table is."""
    keys = {key: wish for key, wish in wishes.items() if wish not in (None, ())}
    with _as_options():
        for key in _STRANDS:
            if key in keys:
                with under(key):
                    keys[key] = _with_diameter(str(keys[key]), rack, practice)
        strands: dict[str, str] = {}
        for place, strand in cast(Sequence[tuple[int, str]], keys.pop("restring", ())):
            with under(f"replace, {place}"):
                if str(place) in strands:
                    raise refused("this section is named twice", "say one strand for it")
                strands[str(place)] = _with_diameter(strand, rack, practice)
        if strands:
            keys["replace"] = strands
        return variant_of({"name": _NOTHING.name, **keys}, practice)


def _with_diameter(strand: str, rack: Rack | None, practice: Practice) -> str:
    """Return a strand that is named by its strength alone as its spool on the rack says it."""
    asked = parse_strand_by_strength(strand, practice)
    if asked is None:
        return strand
    if rack is None:
        raise refused(
            f"{strand!r} says a strength and no diameter",
            "read it off the spool and write it first, or name your rack with --rack",
        )
    spool = spool_by_strength(asked, rack, practice)
    found = (spool.diameter, spool.material, spool.strength, asked.length)
    text = " ".join(part if isinstance(part, str) else part.plain for part in found if part)
    click.echo(f"{strand}: {text}, from {spool.label}", err=True)
    return text


def _varied(
    recipe: Recipe, change: Variant, name: str | None, rack: Rack | None, practice: Practice
) -> Recipe:
    varied = vary(recipe, change, practice, rack)
    if name is not None:
        with under("name"):
            return changed(varied, name=plain_text(name, NAME_MOST))
    words = [short_words(change)] if change != _NOTHING else []
    words += ["from the rack"] if rack else []
    return changed(varied, name=joined_name(recipe, ", ".join(words))) if words else varied


@contextmanager
def _as_options() -> Iterator[None]:
    """Name options where a recipe file's keys are named: `--stop-after` for `stop_after`."""
    try:
        yield
    except Refused as error:
        raise Refused(*map(_of_option, error.faults)) from None


def _of_option(fault: Fault) -> Fault:
    where = fault.where.replace("_", "-").replace(", ", " ").replace("replace", "restring")
    return fault._replace(where=f"--{where}" if where else "")
