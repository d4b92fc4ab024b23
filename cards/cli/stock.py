"""`tagend stock`: the papers, card sizes and label sheets that it knows; the outline of one."""

from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from tagend.cards.cli.files import load_paper_shop, shop_option, write_whole

if TYPE_CHECKING:
    from tagend.cards.practice.shop_file import Shop


@click.command("stock")
@click.argument("name", metavar="[NAME]", required=False)
@click.option("-o", "--output", metavar="OUT.pdf", help="The outline of NAME to write.")
@shop_option
def command(name: str | None, output: str | None, shop: str | None) -> None:
    """List papers, card sizes and label sheets, with their measures.

    With a NAME, draw its outline true to size, to hold against the real sheet.
    """
    context = click.get_current_context()
    if name is None and output is not None:
        raise click.UsageError("Name what to draw; without -o all stock is listed.", context)
    if name is not None and output is None:
        raise click.UsageError("Missing option '-o' / '--output'.", context)
    wants = load_paper_shop(shop)
    if name is None or output is None:
        _list(wants)
        return
    from tagend.cards.printing.stock_printing import stock_pdf

    write_whole(output, stock_pdf(name, wants))
    click.echo(f"wrote {output}; print it at 100 %, not fitted to the page", err=True)


def _list(shop: "Shop") -> None:
    from tagend.cards.printing.own_paper import own_paper
    from tagend.layouts.paper.lengths import size_in_mm

    with own_paper(shop) as own:
        stock = own.stock
    _section("papers", ((p.name, size_in_mm(p.width, p.height)) for p in stock.papers.values()))
    _section("card sizes", ((c.name, size_in_mm(c.width, c.height)) for c in stock.cards.values()))
    _section(
        "label sheets",
        (
            (s.name, f"{s.columns} × {s.rows} labels of {size_in_mm(s.width, s.height)}")
            for s in stock.labels.values()
            if not s.on_roll
        ),
    )
    _section(
        "label rolls, one page a label",
        ((s.name, size_in_mm(s.width, s.height)) for s in stock.labels.values() if s.on_roll),
    )
    click.echo("Any other card is named by its measure, such as 85x54mm.")


def _section(title: str, rows: Iterable[tuple[str, str]]) -> None:
    click.echo(title)
    for name, size in rows:
        click.echo(f"  {name:<26} {size}")
    click.echo()
