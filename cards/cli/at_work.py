"""A line on the terminal while a person waits long for what is made; gone once it is there."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread
from time import monotonic

_SILENT = 2.0  # seconds for which nobody wonders
_EVERY = 1.0


@contextmanager
def at_work() -> Iterator[None]:
    """Say on a terminal how long the work inside takes, once that is long."""
    if sys.__stderr__ is None or not sys.__stderr__.isatty():
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
        _begin_line(told)
    if told:
        _begin_line(f"{' ' * len(told)}\r")


def _begin_line(text: str) -> None:
    """Write over the line, past what keeps a terminal from obeying a text."""
    if sys.__stderr__ is not None:
        sys.__stderr__.write(f"\r{text}")
        sys.__stderr__.flush()
