"""`tagend cuts`: the cut list, as a table or as JSON."""

from collections.abc import Sequence

import click

from cards.batch import COUNT_MOST
from cards.cli.files import (
    load_practice,
    load_rack,
    rack_option,
    recipes_argument,
    shop_option,
)
from cards.cli.tables import cut_lines
from cards.cli.variants import load_chosen, variant_options
from cards.practice import Practice
from cards.worksheet import Worksheet, worksheet


@click.command("cuts")
@recipes_argument
@click.option("--count", type=click.IntRange(1, COUNT_MOST), help="Leaders of each recipe to cut.")
@rack_option
@click.option("--explain", is_flag=True, help="Show the sum behind each cut.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    count: int | None,
    rack: str | None,
    explain: bool,
    as_json: bool,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """List what to cut for each RECIPE and how to join it; `-` reads standard input."""
    practice = load_practice(shop)
    recipes = load_chosen(names, practice, variant, variants)
    sheets = [worksheet(recipe, practice) for recipe in recipes]
    if as_json:
        from cards.json_lines import json_line

        click.echo("\n".join(json_line(sheet, count or 1) for sheet in sheets))
        return
    blocks = ["\n".join(_lines(sheet, explain)) for sheet in sheets]
    if count is not None or rack is not None:
        blocks.append("\n".join(_batch(sheets, count or 1, rack, practice)))
    click.echo("\n\n".join(blocks))


def _lines(sheet: Worksheet, explain: bool) -> list[str]:
    if not explain:
        return cut_lines(sheet)
    from cards.cli.explained import explained_lines

    return [*cut_lines(sheet), *explained_lines(sheet.leader)]


def _batch(
    sheets: Sequence[Worksheet], count: int, rack: str | None, practice: Practice
) -> list[str]:
    from cards.batch import Order, batch
    from cards.cli.batch_lines import batch_lines

    orders = [Order(sheet.leader, count) for sheet in sheets]
    return batch_lines(batch(orders, load_rack(rack, practice)))
