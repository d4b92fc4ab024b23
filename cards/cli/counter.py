"""`tagend counter`: all recipes at a glance, as PDF."""

from typing import TYPE_CHECKING

import click

from tagend.cards.cli.options import paper_option, shop_option
from tagend.cards.cli.print_command import Printing, print_command

if TYPE_CHECKING:
    from tagend.cards.printing.job import Printed


@print_command("counter", logo=True)
@click.option("--no-codes", is_flag=True, help="Leave out the codes for a customer's phone.")
@paper_option
@shop_option
def command(printing: Printing, paper: str | None, no_codes: bool) -> "Printed":
    """Print a sheet to choose from across a counter: every RECIPE to one scale, by line weight."""
    from tagend.cards.printing.counter import counter_pdf

    return counter_pdf(printing.job, printing.worksheets(), paper, codes=not no_codes)
