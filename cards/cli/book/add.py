"""`tagend book add`: spools that were bought, from a rack file or a table."""

import click

from tagend.cards.book.spools import add
from tagend.cards.cli.book.shared import (
    book_option,
    json_option,
    recording,
    say_change,
    who_option,
)
from tagend.cards.cli.files import load_practice, naming
from tagend.cards.cli.options import shop_option
from tagend.cards.disk.disk import read_bytes
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack


@click.command("add")
@click.argument("rack", metavar="SPOOLS")
@book_option
@who_option
@json_option
@shop_option
def command(rack: str, book: str, who: str | None, as_json: bool, shop: str | None) -> None:
    """Add the spools of SPOOLS, a rack file or a table; those in the book stay as they are.

    A table is a CSV file with the columns label, material, diameter and left, and if you like
    strength, lot and bought.
    """
    spools = load_spools(rack, load_practice(shop))
    with recording(book, who) as change:
        add(change, spools)
        say_change(change, as_json=as_json)


def load_spools(name: str, practice: Practice) -> Rack:
    """Return the spools of a rack file or of a table."""
    from tagend.cards.tables.read_spools import read_spools

    with naming(name):
        return read_spools(name, read_bytes(name), practice)
