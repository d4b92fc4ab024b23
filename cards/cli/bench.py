"""`tagend bench`: the bench sheet of a batch, as PDF."""

import click

from tagend.cards.batches.batch import COUNT_MOST, Order, batch
from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import (
    load_paper_shop,
    load_rack,
    output_option,
    rack_option,
    recipes_argument,
    shop_option,
)
from tagend.cards.cli.variant_options import load_chosen, variant_options
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import practice_of


@click.command("bench")
@recipes_argument
@output_option
@click.option("--count", type=click.IntRange(1, COUNT_MOST), default=1, help="Leaders of each.")
@rack_option
@click.option("--paper", metavar="PAPER", help="Letter, A4, …; see `tagend stock`.")
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    output: str,
    count: int,
    rack: str | None,
    paper: str | None,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """Print a bench sheet for a batch of each RECIPE: what to cut, then how to tie."""
    from tagend.cards.printing.bench_printing import bench_pdf

    wants = load_paper_shop(shop)
    practice = practice_of(wants)
    recipes = load_chosen(names, practice, variant, variants)
    orders = [Order(worksheet(recipe, practice).leader, count) for recipe in recipes]
    whole = batch(orders, load_rack(rack, practice))
    write_whole(output, bench_pdf(whole, practice, wants, paper))
    click.echo(f"wrote {output}", err=True)
