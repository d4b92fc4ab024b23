"""`tagend book`: the commands of the tying book, each in a file of its name."""

import click

from tagend.cards.cli.lazy import LazyGroup

COMMANDS = {
    "start": "Start a tying book.",
    "add": "Add spools from a rack file or a table.",
    "plan": "Say what to cut from which spool.",
    "tie": "Draw the line of leaders, and number them.",
    "print": "Print what belongs to a batch.",
    "recall": "List the leaders that hold a lot or a spool.",
    "mark": "Say that leaders are fished, given or discarded.",
    "correct": "Put right what was entered wrongly.",
    "show": "Say what is left on spools, and of leaders.",
    "undo": "Take back the last change.",
    "history": "List what was done, by whom and when.",
    "export": "Write leaders, draws or spools as a table.",
    "copy": "Copy the whole book into another file.",
}


@click.group("book", cls=LazyGroup, home=__name__, names=COMMANDS)
def command() -> None:
    """Keep the tying book: spools, batches and leaders in one file that loses nothing.

    It plans and draws batches, numbers their leaders, prints what belongs to them, and recalls
    them by lot. The file is named with --book, or once for all with TAGEND_BOOK.
    """
