"""`tagend learn`: what a knot takes in a person's own hands, stored in the shop file."""

import click

from cards.cli.files import load_practice, naming, read_bytes, write_whole
from cards.learning import learn
from cards.units import parse_length


@click.command("learn")
@click.argument("knot", metavar="KNOT")
@click.option("--from", "before", metavar="LENGTH", multiple=True, required=True,
              help="A piece's length before tying; for a joint give both.")  # fmt: skip
@click.option("--to", "after", metavar="LENGTH", required=True,
              help="What is left, end to end; for a loop or fly knot, up to the knot.")  # fmt: skip
@click.option("--shop", metavar="FILE", required=True, envvar="TAGEND_SHOP",
              help="The shop file to store it in.")  # fmt: skip
def command(knot: str, before: tuple[str, ...], after: str, shop: str) -> None:
    """Learn what KNOT takes: tie it once from pieces of known length, trim it, and measure.

    The sum is shown, and the allowance stored in the shop file; the rest of it stays as it is.
    """
    from cards.toml_edit import with_value

    practice = load_practice(shop)
    found = practice.knots.find(knot)
    learned = learn(found, [parse_length(text) for text in before], parse_length(after))
    with naming(shop):
        text = with_value(read_bytes(shop), "allowance", found.name, learned.allowance)
    write_whole(shop, text)
    click.echo(f"{found.name}: {learned.sum}")
    click.echo(f"stored in {shop}: [allowance] {found.name!r} = {learned.allowance!r}", err=True)
