"""A line on the terminal while a person waits long for what is made; gone once it is there."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread
from time import monotonic

import click

_SILENT = 2.0  # seconds for which nobody wonders
_EVERY = 1.0


@contextmanager
def at_work() -> Iterator[None]:
    """Say on a terminal how long the work inside takes, once that is long."""
    if sys.stderr is None or not sys.stderr.isatty():
        yield
        return
    done = Event()
    teller = Thread(target=_tell, args=(done,), daemon=True)
    teller.start()
    try:
        yield
    finally:
        done.set()
        teller.join()


def _tell(done: Event) -> None:
    begun, told = monotonic(), ""
    pause = _SILENT
    while not done.wait(pause):
        pause = _EVERY
        told = f"at work for {monotonic() - begun:.0f} s "
        click.echo(f"\r{told}", nl=False, err=True)
    if told:
        click.echo(f"\r{' ' * len(told)}\r", nl=False, err=True)
