"""`tagend book`: the commands of the tying book, each in a file of its name."""

import click

from tagend.cards.cli.lazy import LazyGroup

COMMANDS = (
    "start",
    "add",
    "plan",
    "tie",
    "print",
    "recall",
    "mark",
    "correct",
    "show",
    "undo",
    "history",
    "export",
    "copy",
)


@click.group("book", cls=LazyGroup, home=__name__, names=COMMANDS)
def command() -> None:
    """Keep the tying book: spools, batches and leaders in one file that loses nothing.

    It plans and draws batches, numbers their leaders, prints what belongs to them, and recalls
    them by lot. The file is named with --book, or once for all with TAGEND_BOOK.
    """
