"""Where the command begins: before the rest is loaded, which a person may stop as well."""

import gc
import signal


def main() -> None:
    """Run the command line; until it is loaded, Ctrl-C ends the process without a word."""
    # The start makes many lasting objects and next to no garbage: looking for it takes 10 ms.
    gc.set_threshold(100_000)
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from tagend.cards.cli import main as run

    try:
        run()
    finally:
        gc.freeze()  # else all of it is looked through once more at the end
