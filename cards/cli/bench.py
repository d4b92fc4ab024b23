"""`tagend bench`: the bench sheet of a batch, as PDF."""

from typing import TYPE_CHECKING

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.cli.files import load_rack
from tagend.cards.cli.options import (
    count_option,
    paper_option,
    rack_option,
    shop_option,
    variant_options,
)
from tagend.cards.cli.print_command import Printing, print_command

if TYPE_CHECKING:
    from tagend.cards.printing.job import Printed


@print_command("bench")
@count_option(default=1, help="Leaders of each.")
@rack_option
@paper_option
@variant_options
@shop_option
def command(printing: Printing, count: int, rack: str | None, paper: str | None) -> "Printed":
    """Print a bench sheet for a batch of each RECIPE: what to cut, then how to tie."""
    from tagend.cards.printing.bench import bench_pdf

    worksheets = printing.worksheets()
    orders = [Order(worksheet.leader, count) for worksheet in worksheets]
    whole = cut_batch(orders, load_rack(rack, printing.job.practice))
    return bench_pdf(printing.job, worksheets, whole, paper)
