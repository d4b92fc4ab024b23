"""Where the command begins: before the rest is loaded, which a person may stop as well."""

import gc
import os
import signal
import sys

GARBAGE = 300_000  # objects: a start makes many lasting ones, and next to no garbage


def main() -> None:
    """Run the command line; until it is loaded, Ctrl-C ends the process without a word."""
    gc.set_threshold(GARBAGE)  # looking for it takes 25 ms
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from tagend.cards.cli import main as run

    try:
        run()
    except SystemExit as end:
        _leave(end.code)
        raise


def _leave(status: str | int | None) -> None:
    """End the process without taking it apart, which takes 10 ms, where no thread is at work."""
    import threading

    if isinstance(status, int) and threading.active_count() == 1:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(status)
