"""`tagend book history`: what was done, entry by entry."""

import click
from msgspec.structs import asdict

from tagend.cards.book.history import HistoryEntry, history
from tagend.cards.cli.book.shared import book_option, json_option, reading, say_json
from tagend.cards.cli.columns import in_columns


@click.command("history")
@book_option
@json_option
def command(book: str, as_json: bool) -> None:
    """List what was done in the book, by whom and when, the last one last."""
    with reading(book) as db:
        entries = history(db)
    if as_json:
        say_json({"entries": [asdict(entry) for entry in entries]})
    elif entries:
        click.echo("\n".join(in_columns([_cells(entry) for entry in entries], right={0})))


def _cells(entry: HistoryEntry) -> tuple[str, ...]:
    undone = "" if entry.stands else " (undone)"
    return str(entry.number), entry.at[:16].replace("T", " "), entry.who or "", entry.told + undone
