"""`tagend table`: recipes from a table of a spreadsheet into files, and from files into a table."""

from collections.abc import Sequence

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli import REFUSED
from tagend.cards.cli.disk import read_bytes
from tagend.cards.cli.files import load_practice, load_recipes, naming
from tagend.cards.cli.options import replace_option, shop_option
from tagend.cards.cli.output import write_output
from tagend.cards.cli.recipe_folder import write_each
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Fault, noting, refuse_any


@click.command("table")
@click.argument("names", metavar="SOURCE...", nargs=-1)
@click.option("-o", "--output", metavar="OUT", help="A folder for recipe files, or OUT.csv.")
@click.option("--columns", is_flag=True, help="List the columns of a table.")
@replace_option
@shop_option
def command(
    names: tuple[str, ...], output: str | None, columns: bool, replace: bool, shop: str | None
) -> int:
    """Write the recipes of tables into the folder OUT, or those of recipe files into OUT.csv.

    A table is a CSV file in UTF-8, with a row for each section from the butt to the fly. What is
    wrong in it is told by row and column; the recipes without a fault are written all the same,
    and the exit status is 2.
    """
    if columns:
        return _list_columns()
    if not names or output is None:
        missing = "option '-o' / '--output'" if names else "argument 'SOURCE...'"
        raise click.UsageError(f"Missing {missing}.")
    practice = load_practice(shop)
    if output.lower().endswith(".csv"):
        return _write_table(names, output, practice, replace)
    return _write_recipes(names, output, practice, replace)


def _list_columns() -> int:
    from tagend.cards.tables.columns import COLUMNS, NEEDED, told

    for column in COLUMNS:
        click.echo(f"{column:<15} {told(column)}{' (needed)' if column in NEEDED else ''}")
    return 0


def _write_table(names: Sequence[str], output: str, practice: Practice, replace: bool) -> int:
    from tagend.cards.tables.write_recipes import csv_table

    recipes = load_recipes(names, practice)
    write_output(output, csv_table(recipes), replace=replace)
    click.echo(f"wrote {output}", err=True)
    for name, recipe in zip(names, recipes, strict=True):
        if number := len(recipe.variants):
            left_out = f"its {counted(number, 'variant')} {'is' if number == 1 else 'are'}"
            found = f"{name}: {left_out} not in the table"
            click.echo(f"{found}; `tagend vary` makes recipes of them", err=True)
    return 0


def _write_recipes(names: Sequence[str], folder: str, practice: Practice, replace: bool) -> int:
    from tagend.cards.tables.read_recipes import read_table

    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for name in names:
        with noting(faults), naming(name):
            table = read_table(read_bytes(name), practice)
            recipes += table.recipes
            refuse_any(table.faults)
    if recipes:
        with noting(faults):
            write_each(recipes, folder, replace=replace)
    for fault in faults:
        click.echo(str(fault), err=True)
    return REFUSED if faults else 0
