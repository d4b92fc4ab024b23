"""One run at a time on a file: its name in; other runs wait until this one is done.

The lock is the operating system's own, on a file beside it that is named after it. So it ends with
the process, however that ends, and no lock of a run that died is ever in the way. The file itself
cannot bear the lock, since it is replaced whole when it is written.
"""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from tagend.cards.disk.disk import not_written
from tagend.layouts.base.faults import refused

PATIENCE = 30.0  # seconds; a run takes one or two


@contextmanager
def alone(name: str, patience: float = PATIENCE) -> Iterator[None]:
    """Hold a file for this run. Raises `Refused` where another holds it for too long."""
    from filelock import FileLock, Timeout

    target = Path(os.path.realpath(name))
    lock = target.with_name(f".{target.name}.lock")
    held = FileLock(lock)
    try:
        os.stat(target.parent)  # which the library would make
        held.acquire(timeout=patience)
    except Timeout:
        raise refused("another run is still at work on this file", "try again", name) from None
    except OSError as error:
        raise not_written(name, error) from None
    try:
        yield
    finally:
        # Before it is let go, so that nobody can hold what is no longer there. Windows takes no
        # open file away, and does it afterwards.
        with suppress(OSError):
            lock.unlink()
        held.release()
