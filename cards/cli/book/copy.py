"""`tagend book copy`: all of the book in another file, while others go on with it."""

import click

from tagend.cards.book.file import copied, opened
from tagend.cards.cli.book.shared import book_option
from tagend.cards.disk.disk import note_written


@click.command("copy")
@click.argument("name", metavar="FILE.db")
@book_option
def command(name: str, book: str) -> None:
    """Copy the whole book into FILE.db, which must not be there yet."""
    note_written(name)
    with opened(book) as db:
        copied(db, name)
    click.echo(f"copied {book} to {name}", err=True)
