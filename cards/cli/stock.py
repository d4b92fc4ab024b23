"""`tagend stock`: the papers, card sizes and label sheets that the tool knows."""

from collections.abc import Iterable

import click


@click.command("stock")
def command() -> None:
    """List papers, card sizes and label sheets, with their measures."""
    from layouts.lengths import size_in_mm
    from layouts.stock import shipped

    stock = shipped()
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
