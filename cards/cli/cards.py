"""`tagend cards`: pocket cards on sheets, as PDF."""

from typing import TYPE_CHECKING

import click
from click.core import ParameterSource

from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import (
    load_logo,
    load_paper_shop,
    load_rack,
    output_option,
    rack_option,
    recipes_argument,
    shop_option,
)
from tagend.cards.cli.paper_length import PAPER_LENGTH
from tagend.cards.cli.variant_options import load_chosen, variant_options
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import practice_of

if TYPE_CHECKING:
    from tagend.layouts.sheets.pieces import Backs
    from tagend.layouts.sheets.pouch import Use
    from tagend.layouts.sheets.shelves import Order


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
@click.option("--deck", is_flag=True, help="Add a cover, a reference and a cautions card.")
@click.option("--hole", is_flag=True, help="Add a strip to punch, for a deck on a ring.")
@click.option(
    "--shopping", type=click.IntRange(1, 10_000), help="List the line to buy for so many leaders."
)
@click.option("--figures", is_flag=True, help="Draw the knots, even where that takes more cards.")
@click.option("--ruler", is_flag=True, help="A ruler along an edge, to measure loops and tags.")
@click.option("--brief", is_flag=True, help="Leave out how the knots are tied.")
@click.option(
    "--order",
    type=click.Choice(["sheet", "stack"]),
    default="sheet",
    help="stack: the stacks cut from a run, laid on each other, are in order.",
)
@click.option("--gutter", type=PAPER_LENGTH, default="0 mm", help="Space between two cards.")
@click.option("--margin", type=PAPER_LENGTH, default="5 mm", help="What stays free of cards.")
@click.option(
    "--wet", "pouch", flag_value="wet", help="Add a sheet for laminating: 5 mm of film all round."
)
@click.option("--dry", "pouch", flag_value="dry", help="The same, 3.2 mm for use in the dry.")
@click.option(
    "--press", is_flag=True, help="For a print shop: each side a page, with bleed and crop marks."
)
@click.option("--copies", type=click.IntRange(1, 1000), default=1, help="Cards of each recipe.")
@rack_option
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    output: str,
    size: str | None,
    paper: str | None,
    backs: "Backs",
    order: "Order",
    gutter: float,
    margin: float,
    pouch: "Use | None",
    press: bool,
    type_size: str,
    figures: bool,
    ruler: bool,
    brief: bool,
    deck: bool,
    hole: bool,
    shopping: int | None,
    copies: int,
    rack: str | None,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """Print a pocket card to tie from for each RECIPE; `-` reads standard input."""
    from tagend.cards.printing.card_making import CardStyle
    from tagend.cards.printing.card_sheets import SheetWishes
    from tagend.cards.printing.pages import CardWishes, cards_pdf

    if press:
        _refuse_sheet_options()
    wants = load_paper_shop(shop)
    practice = practice_of(wants)
    recipes = load_chosen(names, practice, variant, variants)
    worksheets = [worksheet(recipe, practice) for recipe in recipes]
    style = CardStyle(
        not brief, type_size == "large", shopping, figures, ruler, load_logo(wants, shop)
    )
    on_rack = load_rack(rack, practice)
    sheets = SheetWishes(backs, order, gutter, margin, pouch, press)
    wishes = CardWishes(size, paper, sheets, copies, style, on_rack, deck, hole)
    write_whole(output, cards_pdf(worksheets, practice, wants, wishes))
    click.echo(f"wrote {output}; print it at 100 %, not fitted to the page", err=True)


def _refuse_sheet_options() -> None:
    """Refuse the options that say how cards share a sheet: on a press, none does."""
    context = click.get_current_context()
    given = {
        "paper": "--paper",
        "backs": "--backs",
        "order": "--order",
        "gutter": "--gutter",
        "margin": "--margin",
        "pouch": "--wet and --dry",
    }
    for name, option in given.items():
        if context.get_parameter_source(name) is ParameterSource.COMMANDLINE:
            raise click.UsageError(
                f"With --press each side is a page of its own; leave out {option}.", context
            )
