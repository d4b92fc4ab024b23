"""`tagend bench`: the bench sheet of a batch, as PDF."""

import click

from tagend.cards.batches.batch import COUNT_MOST, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.cli.files import load_rack, paper_option, rack_option, shop_option
from tagend.cards.cli.print_command import Printing, print_command
from tagend.cards.cli.variant_options import variant_options


@print_command("bench")
@click.option("--count", type=click.IntRange(1, COUNT_MOST), default=1, help="Leaders of each.")
@rack_option
@paper_option
@variant_options
@shop_option
def command(printing: Printing, count: int, rack: str | None, paper: str | None) -> bytes:
    """Print a bench sheet for a batch of each RECIPE: what to cut, then how to tie."""
    from tagend.cards.printing.bench import bench_pdf

    worksheets = printing.worksheets()
    orders = [Order(worksheet.leader, count) for worksheet in worksheets]
    whole = cut_batch(orders, load_rack(rack, printing.job.practice))
    return bench_pdf(printing.job, worksheets, whole, paper)
