"""`tagend cuts`: the cut list, as a table or as JSON."""

import click

from cards.cli.files import load_practice, load_recipes, recipes_argument, shop_option
from cards.cli.tables import cut_lines
from cards.worksheet import worksheet


@click.command("cuts")
@recipes_argument
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@shop_option
def command(names: tuple[str, ...], as_json: bool, shop: str | None) -> None:
    """List what to cut for each RECIPE and how to join it; `-` reads standard input."""
    practice = load_practice(shop)
    sheets = [worksheet(recipe, practice) for recipe in load_recipes(names, practice)]
    if as_json:
        from cards.json_lines import json_line

        click.echo("\n".join(json_line(sheet) for sheet in sheets))
    else:
        click.echo("\n\n".join("\n".join(cut_lines(sheet)) for sheet in sheets))
