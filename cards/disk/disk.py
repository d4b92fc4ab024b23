"""The disk: a name in, what the file holds out; bytes in, the file written whole or not at all."""

import os
import stat
import sys
from contextlib import suppress
from io import FileIO
from typing import BinaryIO

import click

from tagend.layouts.base.faults import Refused, one_line, refused

LARGEST = 100_000_000  # bytes; a picture of 64 million pixels has some 50

_written: list[str] = []  # by this process


def read_bytes(name: str) -> bytes:
    """Return what a file holds, or standard input for `-`; raises `Refused`."""
    if name == "-":
        with suppress(OSError):  # where it is no file
            note_input(sys.stdin.fileno())
        return _bounded(sys.stdin.buffer)
    try:
        with open(name, "rb", buffering=0, opener=_opened) as file:
            found = os.fstat(file.fileno())
            _inputs().append(found)
            return _begun(file, found) + _bounded(file)
    except Refused:
        raise
    except FileNotFoundError:
        raise refused("there is no such file", "check its name and folder") from None
    except IsADirectoryError:
        raise refused("this is a folder", "name a file in it") from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else "no file can be called so"
        raise refused(f"cannot be read: {reason}", "name a file that can be opened") from None


def _opened(name: str, flags: int) -> int:
    """Open a file without waiting for whoever may write into a pipe of that name."""
    return os.open(name, flags | getattr(os, "O_NONBLOCK", 0))


def _begun(file: FileIO, found: os.stat_result) -> bytes:
    """Return the first byte of a pipe; after it, reading waits for what a writer has still to say.

    A plain file is not begun: it has no writer to wait for.
    """
    if found.st_size > LARGEST:
        raise _too_large()
    if stat.S_ISREG(found.st_mode):
        return b""
    first = file.read(1)
    if first == b"" and stat.S_ISFIFO(found.st_mode):
        raise refused("nothing writes into this pipe", "name a file")
    if hasattr(os, "O_NONBLOCK"):
        os.set_blocking(file.fileno(), True)
    return first or b""


def _bounded(file: BinaryIO | FileIO) -> bytes:
    parts: list[bytes] = []
    left = LARGEST
    while part := file.read(min(left, 1 << 16)):
        parts.append(part)
        left -= len(part)
    if not left:
        raise _too_large()
    return b"".join(parts)


def _too_large() -> Refused:
    return refused("this is too large to be read", f"give at most {LARGEST // 10**6} MB")


def note_written(name: str) -> None:
    """Note a file or a folder that this run has changed, or is about to."""
    _written.append(name)


def anything_written() -> bool:
    """Whether this run has changed anything on the disk."""
    return bool(_written)


def note_input(file: str | int) -> None:
    """Note a file, by its name or as it is open, as one that the running command uses."""
    with suppress(OSError, ValueError):
        _inputs().append(os.stat(file))


def is_input(name: str) -> bool:
    """Whether the running command has used this very file, by whatever name."""
    try:
        found = os.stat(name)
    except (OSError, ValueError):
        return False
    return any(os.path.samestat(found, file) for file in _inputs())


def _inputs() -> list[os.stat_result]:
    """Return the files noted for the command that is running; outside of one, a new list."""
    context = click.get_current_context(silent=True)
    noted: list[os.stat_result] = context.meta.setdefault(__name__, []) if context else []
    return noted


def write_whole(name: str, data: bytes) -> None:
    """Write the file so that nobody, at any moment, finds half of it.

    A link is followed. A file that exists keeps its owner and its permissions. That hard links
    to it keep the old one is told: written in place, it could be found half. Raises `Refused`, and
    leaves what was there.
    """
    mode = mode_of(name)
    target = os.path.realpath(name)
    part = os.path.join(os.path.dirname(target), f".{os.urandom(8).hex()}.part")
    try:
        try:
            # Created as the target would be, so that the user's own mask decides who may read it.
            with open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666), "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            links = 1
            if mode is not None:
                links = os.stat(target).st_nlink
                _give_to_its_owner(part, target)
                os.chmod(part, mode)
            note_written(name)
            os.replace(part, target)
            if links > 1:
                told = f"{name}: other hard links to it keep what was there before"
                click.echo(one_line(told), err=True)
        except BaseException:
            with suppress(FileNotFoundError):
                os.unlink(part)
            raise
    except OSError as error:
        raise not_written(name, error) from error


def _give_to_its_owner(part: str, target: str) -> None:
    """Give a file to whom the one that it replaces belongs to, where this user may."""
    if sys.platform != "win32":
        there = os.stat(target)
        with suppress(PermissionError):
            os.chown(part, there.st_uid, there.st_gid)


def make_folder(name: str) -> None:
    """Make a folder, and those above it, where there is none; raises `Refused`."""
    try:
        note_written(name)
        os.makedirs(name, exist_ok=True)
    except OSError as error:
        found = f"cannot be made: {error.strerror}"
        raise refused(found, "name a folder you may write to", name) from None


def not_written(name: str, error: OSError) -> Refused:
    """Return the refusal of a file that the system does not let us write."""
    found = f"cannot be written: {error.strerror}"
    return refused(found, "name a file in a folder you may write to", name)


def mode_of(name: str) -> int | None:
    """Return the permissions of the file that would be replaced; None when there is none.

    Raises `Refused` where nothing can be written.
    """
    try:
        return _mode_of(os.path.realpath(name), name)
    except OSError as error:
        raise not_written(name, error) from error


def _mode_of(target: str, name: str) -> int | None:
    try:
        found = os.stat(target)
    except FileNotFoundError:
        folder = os.path.dirname(target)
        if os.path.isdir(folder):
            return None
        missing = f"cannot be written: there is no folder {folder}"
        raise refused(missing, "make it first, or name another", name) from None
    if stat.S_ISDIR(found.st_mode):
        raise refused("cannot be written: this is a folder", "name a file in it", name)
    if not stat.S_ISREG(found.st_mode):
        raise refused("cannot be written: this is not an ordinary file", "name another", name)
    os.close(os.open(target, os.O_WRONLY))  # a file that may not be changed is not replaced
    return stat.S_IMODE(found.st_mode)
