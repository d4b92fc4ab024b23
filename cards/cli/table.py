"""`tagend table`: recipes from a table of a spreadsheet into files, and from files into a table."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli import REFUSED
from tagend.cards.cli.files import load_practice, load_rack, load_recipes, naming
from tagend.cards.cli.options import rack_option, reading, replace_option, shop_option
from tagend.cards.cli.output import tell_written, write_output
from tagend.cards.cli.recipe_folder import write_each
from tagend.cards.cli.spoken import refusal_told
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, under

if TYPE_CHECKING:
    from tagend.cards.cli.table_reading import Asked

_OF_SECTIONS = """\
Where a row is a leader, a column says of which section, and if it likes in which unit:
butt length (in), length 2, tippet strength (lb), or tippet alone for cells as 24" .023 25lb."""
_TABLES = (".csv", ".xlsx")


def _units(text: str) -> dict[str, str]:
    from tagend.cards.tables.columns_file import parse_units

    return parse_units(text)


@click.command("table")
@click.argument("names", metavar="SOURCE...", nargs=-1)
@click.option(
    "-o", "--output", metavar="OUT", help="A folder for recipe files, or OUT.csv or OUT.xlsx."
)
@click.option(
    "--units",
    callback=reading(_units),
    metavar="UNITS",
    help='Of numbers without one: lengths, diameters, strengths, such as "in, in, lb".',
)
@click.option("--material", metavar="NAME", help="Of the sections that name none.")
@click.option("--skip-wrong", is_flag=True, help="Write the leaders without a wrong cell.")
@click.option("--as", "like", metavar="FILE", help="The .columns.toml of another month's table.")
@click.option("--columns", is_flag=True, help="List what a column may be taken as.")
@rack_option
@replace_option
@shop_option
def command(
    names: tuple[str, ...],
    output: str | None,
    units: dict[str, str] | None,
    material: str | None,
    skip_wrong: bool,
    like: str | None,
    columns: bool,
    rack: str | None,
    replace: bool,
    shop: str | None,
) -> int:
    """Write the recipes of tables into the folder OUT, or those of recipe files into OUT.csv.

    A table is a .csv, .xlsx or .ods file with a row for each leader, or one for each section from
    the butt to the fly. What its columns were taken as is shown, and asked where it is in doubt;
    the answers are kept beside it in NAME.columns.toml. What is wrong is told by cell, and then
    nothing is written but with --skip-wrong. Without OUT no recipe is written.
    """
    if columns:
        return _list_columns()
    if not names:
        raise click.UsageError("Missing argument 'SOURCE...'.")
    practice = load_practice(shop)
    if output is not None and output.lower().endswith(_TABLES):
        return _write_table(names, output, practice, replace)
    from tagend.cards.cli.table_reading import Asked

    asked = Asked(
        practice=practice,
        rack=load_rack(rack, practice),
        units=units or {},
        material=material and _material(material, practice),
        like=like,
    )
    return _write_recipes(names, output, asked, skip_wrong=skip_wrong, replace=replace)


def _material(name: str, practice: Practice) -> str:
    from tagend.cards.tables.recipe_tables import material_named

    with under("--material", ": "):
        return material_named(name, practice)


def _list_columns() -> int:
    from tagend.cards.tables.columns import COLUMNS, NEEDED, told

    for column in COLUMNS:
        click.echo(f"{column:<15} {told(column)}{' (needed)' if column in NEEDED else ''}")
    click.echo(_OF_SECTIONS, err=True)
    return 0


def _write_table(names: Sequence[str], output: str, practice: Practice, replace: bool) -> int:
    from tagend.cards.tables.write_recipes import csv_table, xlsx_table

    recipes = load_recipes(names, practice)
    table = csv_table if output.lower().endswith(".csv") else xlsx_table
    write_output(output, table(recipes), replace=replace)
    tell_written(f"{output}")
    for name, recipe in zip(names, recipes, strict=True):
        if number := len(recipe.variants):
            left_out = f"its {counted(number, 'variant')} {'is' if number == 1 else 'are'}"
            found = f"{name}: {left_out} not in the table"
            click.echo(f"{found}; `tagend vary` makes recipes of them", err=True)
    return 0


def _write_recipes(
    names: Sequence[str], folder: str | None, asked: "Asked", *, skip_wrong: bool, replace: bool
) -> int:
    from tagend.cards.cli.table_reading import read_table_file

    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for name in names:
        with noting(faults), naming(name):
            read = read_table_file(name, asked)
            recipes += read.recipes
            refuse_any(read.faults)
    wrong = bool(faults) and not skip_wrong
    lost: list[Fault] = []
    if recipes and folder is not None and not wrong:
        with noting(lost):
            write_each(recipes, folder, replace=replace)
    if faults or lost:
        click.echo(str(refusal_told(Refused(*faults, *lost))), err=True)
    if recipes and (wrong or folder is None):
        click.echo(_left_to_say(len(recipes), wrong=wrong), err=True)
    return REFUSED if wrong or lost or not recipes else 0


def _left_to_say(number: int, *, wrong: bool) -> str:
    leaders = counted(number, "leader")
    if wrong:
        return f"no recipe is written; --skip-wrong takes the other {leaders}"
    return f"{leaders} can be read; -o FOLDER writes them"
