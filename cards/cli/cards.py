"""`tagend cards`: pocket cards on sheets, as PDF."""

import click

from cards.cli.files import (
    load_rack,
    load_recipes,
    load_shop,
    output_option,
    rack_option,
    recipes_argument,
    shop_option,
    write_whole,
)
from cards.shop_file import practice_of
from cards.worksheet import worksheet


@click.command("cards")
@recipes_argument
@output_option
@click.option("--size", metavar="SIZE", help="ID-1, index-3x5, A7, 85x54mm, …; see `tagend stock`.")
@click.option("--paper", metavar="PAPER", help="Letter, A4, …; see `tagend stock`.")
@click.option(
    "--backs",
    type=click.Choice(["fold", "long-edge", "short-edge", "separate"]),
    default="fold",
    help="Backs beside their fronts to fold, or behind them on a printer that turns the paper.",
)
@click.option(
    "--type",
    "type_size",
    type=click.Choice(["normal", "large"]),
    default="normal",
    help="large is read without glasses, on a larger card where it must be.",
)
@click.option("--brief", is_flag=True, help="Leave out how the knots are tied.")
@click.option("--copies", type=click.IntRange(1, 1000), default=1, help="Cards of each recipe.")
@rack_option
@shop_option
def command(
    names: tuple[str, ...],
    output: str,
    size: str | None,
    paper: str | None,
    backs: str,
    type_size: str,
    brief: bool,
    copies: int,
    rack: str | None,
    shop: str | None,
) -> None:
    """Print a pocket card to tie from for each RECIPE; `-` reads standard input."""
    from cards.card_making import CardStyle
    from cards.printing import CardWishes, cards_pdf, read_backs

    wants = load_shop(shop)
    practice = practice_of(wants)
    worksheets = [worksheet(recipe, practice) for recipe in load_recipes(names, practice)]
    style = CardStyle(taught=not brief, large=type_size == "large")
    on_rack = load_rack(rack, practice)
    wishes = CardWishes(size, paper, read_backs(backs), copies, style, on_rack)
    write_whole(output, cards_pdf(worksheets, practice, wants, wishes))
    click.echo(f"wrote {output}; print it at 100 %, not fitted to the page", err=True)
