"""`tagend book plan`: what a batch would take from the book's spools; nothing is recorded."""

import click

from tagend.cards.batches.batch import Batch
from tagend.cards.book.spools import spools, usable
from tagend.cards.cli.book.orders import again_option, load_orders, orders_argument, orders_of
from tagend.cards.cli.book.shared import book_option, json_option, reading, say_json
from tagend.cards.cli.files import load_job, load_practice
from tagend.cards.cli.heed import anyway_option
from tagend.cards.cli.options import paper_option, replace_option, shop_option
from tagend.cards.cli.output import check_output, named_file
from tagend.cards.cli.show import show_option


@click.command("plan")
@orders_argument
@again_option
@click.option("--bench", metavar="OUT.pdf", help="Also write its bench sheet, without numbers.")
@paper_option
@replace_option
@show_option
@anyway_option
@book_option
@json_option
@shop_option
def command(
    words: tuple[str, ...],
    again: tuple[str, ...],
    bench: str | None,
    paper: str | None,
    replace: bool,
    anyway: bool,
    book: str,
    as_json: bool,
    shop: str | None,
) -> None:
    """Say what to cut from which spool for so many of each RECIPE, and what is to buy."""
    from tagend.cards.batches.cutting import cut_batch

    if bench is not None:
        named_file(bench)
        check_output(bench, replace=replace)
    practice = load_practice(shop)
    asked = load_orders(words, practice)
    with reading(book) as db:
        orders = orders_of(asked, again, db, practice, anyway=anyway)
        rack = usable(spools(db))
    batch = cut_batch(orders, rack)
    if as_json:
        from tagend.cards.batches.batch_json import batch_json

        say_json(batch_json(batch))
    else:
        from tagend.cards.cli.batch_lines import rack_batch_lines

        click.echo("\n".join(rack_batch_lines(batch, rack)))
    if bench is not None:
        _write_bench(bench, batch, paper, shop, replace=replace)


def _write_bench(
    name: str, batch: Batch, paper: str | None, shop: str | None, *, replace: bool
) -> None:
    from tagend.cards.cli.print_command import write_pdf
    from tagend.cards.leader.worksheet import worksheet
    from tagend.cards.printing.bench import bench_pdf

    job = load_job(shop)
    sheets = [worksheet(order.leader.recipe, job.practice) for order in batch.orders]
    write_pdf(name, bench_pdf(job, sheets, batch, paper), replace=replace)
