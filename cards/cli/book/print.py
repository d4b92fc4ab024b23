"""`tagend book print`: the bench sheet, labels and cards of a batch, as the book has it."""

from typing import TYPE_CHECKING, Any, Literal

import click

from tagend.cards.book.leaders import Sought, recall
from tagend.cards.book.naming import batch_number, numbers
from tagend.cards.book.orders import leader_reader
from tagend.cards.book.tying import tied_orders, with_draws
from tagend.cards.cli.at_work import at_work
from tagend.cards.cli.book.shared import book_option, reading
from tagend.cards.cli.completion import stock_names
from tagend.cards.cli.files import load_job
from tagend.cards.cli.options import label_options, paper_option, replace_option, shop_option
from tagend.cards.cli.output import check_output
from tagend.cards.cli.print_command import output_options, to_write, write_or_tell

if TYPE_CHECKING:
    from tagend.cards.printing.batch import BatchWishes


@click.command("print")
@click.argument("batch", metavar="BATCH")
@click.option("--bench", is_flag=True, help="Its bench sheet.")
@click.option("--labels", is_flag=True, help="A label for each leader.")
@click.option("--cards", is_flag=True, help="A card for each recipe.")
@click.option("--numbers", "chosen", metavar="NUMBERS", help="Labels of these alone: 12-15,17.")
@label_options
@click.option(
    "--size",
    metavar="SIZE",
    shell_complete=stock_names("cards"),
    help="The card size; see `tagend stock`.",
)
@paper_option
@output_options
@replace_option
@book_option
@shop_option
def command(
    batch: str,
    book: str,
    output: str | None,
    plan: bool,
    replace: bool,
    shop: str | None,
    **wishes: Any,
) -> None:
    """Print what belongs to BATCH: its bench sheet, labels and cards, in one PDF.

    All are numbered and dated, with their lots. Labels that were spoiled or lost are printed again
    with the same numbers.
    """
    if not any(wishes[kind] for kind in ("bench", "labels", "cards")):
        raise click.UsageError("Say what to print: --bench, --labels, --cards.")
    name = to_write(output, plan=plan)
    if name is not None:
        check_output(name, replace=replace)
    job = load_job(shop, logo=True)
    with reading(book) as db:
        tied = tied_orders(db, batch_number(batch), leader_reader(job.practice))
        if wishes["bench"] or wishes["cards"]:
            tied = with_draws(db, tied)
        leaders = recall(db, Sought(batch=tied.number, numbers=_numbers(wishes["chosen"]))).leaders
    from tagend.cards.printing.batch import batch_pdf

    with at_work():
        printed = batch_pdf(job, tied, leaders, _wishes(**wishes))
    write_or_tell(name, printed, replace=replace)


def _numbers(chosen: str | None) -> tuple[int, ...] | None:
    return None if chosen is None else numbers([chosen])


def _wishes(
    *,
    bench: bool,
    labels: bool,
    cards: bool,
    chosen: str | None,
    stock: str | None,
    start: int,
    skip: tuple[int, ...],
    code: bool,
    first_out: Literal["butt", "fly"] | None,
    test_box: bool,
    size: str | None,
    paper: str | None,
) -> "BatchWishes":
    from tagend.cards.printing.batch import BatchWishes
    from tagend.cards.printing.cards import CardWishes
    from tagend.cards.printing.labels import LabelNote, LabelWishes

    return BatchWishes(
        bench=bench,
        cards=CardWishes(size=size, paper=paper) if cards else None,
        labels=LabelWishes(stock=stock, start=start, skip=skip, code=code) if labels else None,
        note=LabelNote(first_out=first_out, test_box=test_box),
        paper=paper,
    )
