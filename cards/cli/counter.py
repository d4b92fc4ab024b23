"""`tagend counter`: all recipes at a glance, as PDF."""

from tagend.cards.cli.options import paper_option, shop_option
from tagend.cards.cli.print_command import Printing, print_command


@print_command("counter", logo=True)
@paper_option
@shop_option
def command(printing: Printing, paper: str | None) -> bytes:
    """Print a sheet for the counter that shows every RECIPE at a glance."""
    from tagend.cards.printing.counter import counter_pdf

    return counter_pdf(printing.job, printing.worksheets(), paper)
