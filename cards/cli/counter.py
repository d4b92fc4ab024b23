"""`tagend counter`: all recipes at a glance, as PDF."""

import click

from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import (
    load_logo,
    load_paper_shop,
    load_recipes,
    output_option,
    recipes_argument,
    shop_option,
)
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import practice_of


@click.command("counter")
@recipes_argument
@output_option
@click.option("--paper", metavar="PAPER", help="Letter, A4, …; see `tagend stock`.")
@shop_option
def command(names: tuple[str, ...], output: str, paper: str | None, shop: str | None) -> None:
    """Print a sheet for the counter that shows every RECIPE at a glance."""
    from tagend.cards.printing.counter_printing import counter_pdf

    wants = load_paper_shop(shop)
    practice = practice_of(wants)
    worksheets = [worksheet(recipe, practice) for recipe in load_recipes(names, practice)]
    write_whole(output, counter_pdf(worksheets, practice, wants, paper, load_logo(wants, shop)))
    click.echo(f"wrote {output}", err=True)
