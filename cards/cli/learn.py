"""`tagend learn`: what a knot takes in a person's own hands, stored in the shop file."""

import click

from tagend.cards.base.units import parse_length
from tagend.cards.cli.completion import knot_names
from tagend.cards.cli.files import load_shop
from tagend.cards.leader.learning import learn, written_key
from tagend.cards.practice.shop_file import practice_of


@click.command("learn")
@click.argument("knot", metavar="KNOT", shell_complete=knot_names)
@click.option("--from", "before", metavar="LENGTH", multiple=True, required=True,
              help="A piece's length before tying; for a joint give both.")  # fmt: skip
@click.option("--to", "after", metavar="LENGTH", required=True,
              help="What is left, end to end; for a loop or fly knot, up to the knot.")  # fmt: skip
@click.option("--shop", metavar="FILE", required=True, envvar="TAGEND_SHOP",
              help="The shop file to store it in.")  # fmt: skip
@click.option("--replace", is_flag=True, help="Replace another figure that is there already.")
def command(knot: str, before: tuple[str, ...], after: str, shop: str, replace: bool) -> None:
    """Learn what KNOT takes: tie it once from pieces of known length, trim it, and measure.

    The sum is shown, and the lap (of a knot in one strand its fold) stored in the shop file, of
    which the rest stays as it is.
    """
    from tagend.cards.cli.store import store

    wants = load_shop(shop)
    knots = practice_of(wants).knots
    found = knots.find(knot)
    learned = learn(found, [parse_length(text) for text in before], parse_length(after))
    key = written_key(found, knots, wants.lap or {})
    store(shop, "lap", {key: learned.lap}, replace=replace)
    click.echo(f"{found.name}: {learned.sum}")
