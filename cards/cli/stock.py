"""`tagend stock`: the papers, card sizes and label sheets that it knows; the outline of one."""

from collections.abc import Iterable

import click

from tagend.cards.cli.completion import stock_names
from tagend.cards.cli.files import load_job, load_shop, naming
from tagend.cards.cli.options import replace_option, shop_option
from tagend.cards.cli.show import show_option


@click.command("stock")
@click.argument(
    "name",
    metavar="[NAME]",
    required=False,
    shell_complete=stock_names("labels", "papers", "cards"),
)
@click.option("-o", "--output", metavar="OUT.pdf", help="The outline of NAME to write.")
@replace_option
@show_option
@shop_option
def command(name: str | None, output: str | None, replace: bool, shop: str | None) -> None:
    """List papers, card sizes and label sheets, with their measures.

    With a NAME, draw its outline true to size, to hold against the real sheet.
    """
    if name is None:
        if output is not None:
            raise click.UsageError("Name what to draw; without -o all stock is listed.")
        _list(shop)
        return
    if output is None:
        raise click.UsageError("Missing option '-o' / '--output'.")
    from tagend.cards.cli.print_command import write_pdf
    from tagend.cards.printing.stock import stock_pdf

    write_pdf(output, stock_pdf(load_job(shop), name), replace=replace)


def _list(shop: str | None) -> None:
    from tagend.cards.printing.own_stock import own_stock
    from tagend.layouts.paper.lengths import size_in_mm

    wants = load_shop(shop)
    with naming(shop or "shop"):
        stock, _ = own_stock(wants)
    labels = stock.labels.values()
    _section("papers", ((p.name, size_in_mm(p.width, p.height)) for p in stock.papers.values()))
    _section("card sizes", ((c.name, size_in_mm(c.width, c.height)) for c in stock.cards.values()))
    sheets = (
        (s.name, f"{s.columns} × {s.rows} labels of {size_in_mm(s.width, s.height)}")
        for s in labels
        if not s.on_roll
    )
    rolls = ((s.name, size_in_mm(s.width, s.height)) for s in labels if s.on_roll)
    _section("label sheets", sheets)
    _section("label rolls, one page a label", rolls)
    click.echo("Any other card is named by its measure, such as 85x54mm.")


def _section(title: str, rows: Iterable[tuple[str, str]]) -> None:
    click.echo(title)
    for name, size in rows:
        click.echo(f"  {name:<26} {size}")
    click.echo()
