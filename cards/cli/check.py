"""`tagend check`: the taper audit in words, or as JSON."""

from collections.abc import Callable

import click

from tagend.cards.cli.files import load_chosen, load_practice
from tagend.cards.cli.options import recipes_argument, shop_option, variant_options
from tagend.cards.cli.spoken import told_of
from tagend.cards.cli.worksheet_lines import audit_lines
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.cores import made_of

_A_CORE = 100  # recipes; for fewer, another core costs more than it saves


def _print_schema(context: click.Context, _option: click.Parameter, is_asked: bool) -> None:
    if not is_asked:
        return
    import json

    from tagend.cards.recipe.recipe_file import json_schema

    click.echo(json.dumps(json_schema(), indent=2))
    context.exit()


@click.command("check")
@recipes_argument
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@click.option("--schema", is_flag=True, is_eager=True, expose_value=False, callback=_print_schema,
              help="Print the JSON Schema of recipe files, for editors.")  # fmt: skip
@variant_options
@shop_option
def command(
    names: tuple[str, ...], as_json: bool, variant: str | None, variants: bool, shop: str | None
) -> int:
    """Audit the taper of each RECIPE; `-` reads standard input.

    Exits with 1 when a leader cannot be tied or cannot do what its recipe says.
    """
    practice, tell = load_practice(shop), _teller(as_json)

    def checked(recipe: Recipe) -> tuple[str, bool]:
        sheet = worksheet(recipe, practice)
        return tell(sheet), sheet.is_wrong

    recipes = load_chosen(names, practice, variant, variants)
    texts, wrong = zip(*made_of(recipes, checked, _A_CORE), strict=True)
    click.echo("\n".join(texts))
    return int(any(wrong))


def _teller(as_json: bool) -> Callable[[Worksheet], str]:
    if as_json:
        from tagend.cards.words.worksheet_json import json_line

        return json_line
    return lambda sheet: "\n".join(audit_lines(told_of(sheet)))
