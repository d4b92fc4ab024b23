"""The same work on all cores: items in; what is made of each out, in their order.

All shares but the first are made by copies of this process. They need to be told nothing, and send
back what they made. That is for Linux, where alone a process can be copied safely. A thread that
only tells how long it takes may run beside: a copy has nothing of it.
"""

import os
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from threading import current_thread, main_thread
from typing import BinaryIO, NoReturn, TypeVar

A = TypeVar("A")
B = TypeVar("B")


def made_of(items: Sequence[A], make: Callable[[A], B], fewest: int) -> list[B]:
    """Return what is made of each item, by as many cores as have so many to make.

    What a copy could not make is made here again, so that it is refused as on one core.
    """
    cores = max(1, min(_cores(), len(items) // fewest))
    size = max(1, -(-len(items) // cores))
    own, *others = (items[first : first + size] for first in range(0, len(items) or 1, size))
    with ExitStack() as copies:
        sent = [copies.enter_context(_made_apart(share, make)) for share in others]
        made = [make(item) for item in own]
        for share, file in zip(others, sent, strict=True):
            made += _read(file) or [make(item) for item in share]
    return made


def _cores() -> int:
    """Return how many cores may be used; of a desk, whose threads share what they hold, one."""
    alone = sys.platform == "linux" and current_thread() is main_thread()
    return len(os.sched_getaffinity(0)) if alone else 1


@contextmanager
def _made_apart(items: Sequence[A], make: Callable[[A], B]) -> Iterator[BinaryIO]:
    """Have a copy of this process make these, and give what it sends back; it ends with us."""
    reads, writes = os.pipe()
    with open(reads, "rb") as file:
        with open(writes, "wb") as end:
            try:
                copy = os.fork()
            except OSError:  # there is no room for another process
                copy = None
            if copy == 0:
                _send(items, make, file, end)
        try:
            yield file
        finally:
            if copy:
                os.kill(copy, signal.SIGKILL)
                os.waitpid(copy, 0)


def _send(
    items: Sequence[A], make: Callable[[A], B], reads: BinaryIO, writes: BinaryIO
) -> NoReturn:
    try:
        import pickle

        reads.close()  # so that a pipe that nobody reads any more ends the copy
        writes.write(pickle.dumps([make(item) for item in items], pickle.HIGHEST_PROTOCOL))
        writes.flush()
    finally:
        os._exit(0)  # whatever came of it: the rest of the run is not the copy's


def _read(file: BinaryIO) -> list[B] | None:
    """Return what a copy made; None where it came to no end."""
    import pickle

    try:
        made: list[B] = pickle.load(file)
    except (EOFError, pickle.UnpicklingError):
        return None
    return made
