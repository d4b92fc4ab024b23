"""`tagend cards`: pocket cards on sheets as a PDF, or those of one leader as an SVG."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import click
from click.core import ParameterSource

from tagend.cards.cli.completion import stock_names
from tagend.cards.cli.files import load_rack
from tagend.cards.cli.options import (
    paper_length_option,
    paper_option,
    rack_option,
    shop_option,
    variant_options,
)
from tagend.cards.cli.print_command import Printing, print_command
from tagend.layouts.base.faults import refused

if TYPE_CHECKING:
    from tagend.cards.printing.job import Printed
    from tagend.layouts.sheets.cutouts import Backs
    from tagend.layouts.sheets.pouch import Use
    from tagend.layouts.sheets.shelves import RunOrder


@print_command("cards", logo=True, svg=True)
@click.option(
    "--size",
    metavar="SIZE",
    shell_complete=stock_names("cards"),
    help="ID-1, index-3x5, A7, 85x54mm, …; see `tagend stock`.",
)
@paper_option
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
@click.option(
    "--hole",
    is_flag=True,
    help="Where to punch for a ring: a strip of paper, or with --wet or --dry the film's rim.",
)
@click.option(
    "--shopping", type=click.IntRange(1, 10_000), help="List the line to buy for so many leaders."
)
@click.option("--ruler", is_flag=True, help="A ruler along an edge, to measure loops and tags.")
@click.option("--knots", is_flag=True, help="Only how the knots are tied, each once, in full.")
@click.option("--brief", is_flag=True, help="Leave out how the knots are tied.")
@click.option(
    "--order",
    type=click.Choice(["sheet", "stack"]),
    default="sheet",
    help="stack: the stacks cut from a run, laid on each other, are in order.",
)
@paper_length_option("--gutter", default="0 mm", help="Space between two cards.")
@paper_length_option("--margin", default="5 mm", help="What stays free of cards.")
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
    printing: Printing,
    backs: "Backs",
    order: "RunOrder",
    gutter: float,
    margin: float,
    pouch: "Use | None",
    press: bool,
    hole: bool,
    type_size: str,
    brief: bool,
    rack: str | None,
    **wishes: Any,  # size, paper, copies and the like, named as in `CardWishes`
) -> "Printed":
    """Print a pocket card to tie from for each RECIPE; `-` reads standard input.

    An OUT.svg, such as for a web page, shows all sides of one leader's cards true to size.
    """
    from tagend.cards.printing.card_sheets import SheetWishes
    from tagend.cards.printing.cards import CardWishes, cards_pdf

    if press:
        _refuse(_OF_SHEETS, "With --press each side is a page of its own")
    if printing.svg:
        _refuse(_OF_PAPER, "An SVG shows each side of a card once, and no paper")
        if (count := len(printing.recipes)) > 1:
            found = f"an SVG shows the cards of one leader, and here are {count}"
            raise refused(found, "name one recipe, or a PDF")
    wanted = CardWishes(
        sheets=SheetWishes(backs, order, gutter, margin, pouch, press, hole),
        taught=not brief,
        large=type_size == "large",
        rack=load_rack(rack, printing.job.practice),
        **wishes,
    )
    worksheets = printing.worksheets(variants=True)
    if not printing.svg:
        return cards_pdf(printing.job, worksheets, wanted)
    from tagend.cards.printing.card_svg import cards_svg

    return cards_svg(printing.job, worksheets[0], wanted)


# The options that say how cards share a sheet; that print them; by the names of their values.
_OF_SHEETS = {
    "paper": "--paper",
    "backs": "--backs",
    "order": "--order",
    "gutter": "--gutter",
    "margin": "--margin",
    "pouch": "--wet and --dry",
}
_OF_PAPER = _OF_SHEETS | {"press": "--press", "hole": "--hole", "copies": "--copies"}


def _refuse(options: Mapping[str, str], why: str) -> None:
    """Refuse options that mean nothing here."""
    context = click.get_current_context()
    for name, option in options.items():
        if context.get_parameter_source(name) is ParameterSource.COMMANDLINE:
            raise click.UsageError(f"{why}; leave out {option}.", context)
