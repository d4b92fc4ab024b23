"""The command line: the only place that prints, exits or knows a file name."""

import os
import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from types import FrameType

import click

from tagend.cards.cli.lazy import LazyGroup
from tagend.cards.cli.streams import settle
from tagend.cards.disk.disk import anything_written
from tagend.layouts.base.faults import Refused

# In the order of their listing, each with what the list says of it.
COMMANDS = {
    "bench": "Print what to cut for a batch, and how to tie it.",
    "book": "Keep spools, batches and leaders in one file.",
    "calibrate": "Write a page that shows what the printer does.",
    "check": "Audit the taper of recipes.",
    "compare": "Compare two to six leaders side by side.",
    "counter": "Print a sheet to choose from across a counter.",
    "cuts": "List what to cut and how to join it.",
    "cards": "Print pocket cards to tie from.",
    "desk": "Open a page for all of this in the browser.",
    "labels": "Print wallet labels with a code on each.",
    "learn": "Learn what a knot takes in one's own hands.",
    "new": "Ask for a recipe step by step and write it.",
    "propose": "Work out a taper from the spools on a rack.",
    "read": "Bring a recipe back from a code or a PDF.",
    "renew": "Tell what new tippets cost a leader.",
    "samples": "Write sample files to try all this with.",
    "shop": "Ask what is printed under and on, and keep it.",
    "stock": "List papers, card sizes and label sheets.",
    "table": "Bring recipes in from a spreadsheet, or out.",
    "vary": "Write a variant of a recipe.",
}
REFUSED = 2  # the request could not be carried out, and nothing was written
UNHEARD = 3  # what it said could not be delivered


@click.group(
    cls=LazyGroup,
    home=__name__,
    names=COMMANDS,
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.version_option(package_name="tagend", message="%(prog)s %(version)s")
def commands() -> None:
    """Turn leader recipes into tying cards and wallet labels."""


def main(arguments: list[str] | None = None) -> None:
    """Run one command; whatever goes wrong becomes a line a person can act on."""
    settle()
    try:
        status = _status(arguments)
    except OSError as error:  # of a disk, or of what says so
        where = error.filename or "its output"
        status = _unheard(f"tagend: stopped: {where}: {error.strerror or error}")
    sys.exit(status)


def _status(arguments: list[str] | None) -> int:
    try:
        with _stoppable():
            status = commands.main(arguments, prog_name="tagend", standalone_mode=False)
    except Refused as error:
        click.echo(str(error), err=True)
    except click.exceptions.NoArgsIsHelpError as error:
        click.echo(error.format_message(), err=True)
    except click.UsageError as error:
        command = error.ctx.command_path if error.ctx else "tagend"
        click.echo(f"{command}: {error.format_message()} See '{command} --help'.", err=True)
    except click.ClickException as error:
        click.echo(f"tagend: {error.format_message()}", err=True)
    except (click.Abort, KeyboardInterrupt):
        kept = "" if anything_written() else "; nothing was written"
        click.echo(f"tagend: stopped{kept}", err=True)
    except SystemExit:  # of click, for the Tab key, or where our reader has gone, as `head` does
        return 0 if "_TAGEND_COMPLETE" in os.environ else _unheard()
    else:
        return status if isinstance(status, int) else 0
    return REFUSED


@contextmanager
def _stoppable() -> Iterator[None]:
    """Let Ctrl-C stop the work inside, unless this process was told not to heed it.

    A library may catch the first one and go on, or tell of it as of a fault of its own; the
    second ends the process at once.
    """
    was, told_lost = signal.getsignal(signal.SIGINT), sys.unraisablehook
    if was != signal.SIG_IGN:
        signal.signal(signal.SIGINT, _stop)
    try:
        yield
    except Exception as error:
        if _was_stopped(error):
            raise KeyboardInterrupt from None
        raise
    finally:
        signal.signal(signal.SIGINT, was)
        sys.unraisablehook = told_lost


def _stop(_: int, frame: FrameType | None) -> None:
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    sys.unraisablehook = _lost
    while frame is not None:
        if frame.f_code.co_filename.startswith("<frozen importlib"):
            # Libraries that are not Python's own may break over an exception while they load.
            signal.raise_signal(signal.SIGINT)
        frame = frame.f_back
    raise KeyboardInterrupt


def _lost(found: "sys.UnraisableHookArgs") -> None:
    """End the process where nobody can be told that it was stopped."""
    if isinstance(found.exc_value, KeyboardInterrupt):
        signal.raise_signal(signal.SIGINT)
    sys.__unraisablehook__(found)


def _was_stopped(error: BaseException | None) -> bool:
    while error is not None and not isinstance(error, KeyboardInterrupt):
        error = error.__context__
    return error is not None


def _unheard(words: str = "") -> int:
    """Let go of all that is still to be said, which would be tried once more at the end."""
    with suppress(OSError):
        click.echo(words, err=True, nl=bool(words))
    nowhere = os.open(os.devnull, os.O_WRONLY)
    for stream in (1, 2):
        os.dup2(nowhere, stream)
    return UNHEARD
