"""`tagend book start`: a new tying book, with the spools of a rack."""

import click

from tagend.cards.book.changes import changing
from tagend.cards.book.file import started
from tagend.cards.book.spools import add
from tagend.cards.cli.book.shared import book_option, json_option, moment, say_change, who_option
from tagend.cards.cli.files import load_practice
from tagend.cards.cli.options import shop_option
from tagend.cards.disk.disk import note_written


@click.command("start")
@book_option
@click.option("--rack", metavar="FILE", help="The spools to begin with: a rack file or a table.")
@who_option
@json_option
@shop_option
def command(book: str, rack: str | None, who: str | None, as_json: bool, shop: str | None) -> None:
    """Start a tying book; more spools come into it with `book add`."""
    from tagend.cards.cli.book.add import load_spools

    spools = None if rack is None else load_spools(rack, load_practice(shop))
    note_written(book)
    with started(book) as db:
        if spools is not None:
            with changing(db, moment(who)) as change:
                add(change, spools)
                say_change(change, as_json=as_json)
    click.echo(f"started {book}", err=True)
