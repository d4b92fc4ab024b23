"""Where the command begins: before the rest is loaded, which a person may stop as well."""

import signal


def main() -> None:
    """Run the command line; until it is loaded, Ctrl-C ends the process without a word."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from tagend.cards.cli import main as run

    run()
