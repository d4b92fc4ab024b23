"""One run at a time on a file: its name in; other runs wait until this one is done.

The lock is the operating system's own, on a file beside it that is named after it. So it ends with
the process, however that ends, and no lock of a run that died is ever in the way. The file itself
cannot bear the lock, since it is replaced whole when it is written.
"""

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from tagend.cards.base.errors import refused

PATIENCE = 30.0  # seconds; a run takes one or two
_AGAIN = 0.02  # seconds

if sys.platform == "win32":
    import msvcrt

    def _take(file: BinaryIO) -> None:
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _take(file: BinaryIO) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


@contextmanager
def alone(name: str, patience: float = PATIENCE) -> Iterator[None]:
    """Hold a file for this run. Raises `Refused` where another holds it for too long."""
    target = Path(os.path.realpath(name))
    lock = target.with_name(f".{target.name}.lock")
    until = time.monotonic() + patience
    while (file := _held(lock, name)) is None:
        if time.monotonic() > until:
            raise refused("another run is still at work on this file", "try again", name)
        time.sleep(_AGAIN)
    with file:
        try:
            yield
        finally:
            # Before it is let go, so that nobody can hold what is no longer there. Windows takes
            # no open file away, and keeps it for the next run.
            with suppress(OSError):
                lock.unlink()


def _held(lock: Path, name: str) -> BinaryIO | None:
    """Return the lock's file where it is ours now, and None where another has it."""
    try:
        file = lock.open("ab")
        try:
            _take(file)
            if os.path.samestat(os.fstat(file.fileno()), lock.stat()):
                return file
        except (BlockingIOError, PermissionError, FileNotFoundError):
            pass
        file.close()
    except OSError as error:
        raise refused(
            f"cannot be written: {error.strerror}", "name a file in a folder you may write to", name
        ) from None
    return None
