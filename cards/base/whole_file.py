"""A path and bytes in; the file replaced whole, or left as it was."""

import errno
import os
import secrets
import stat
from pathlib import Path


def replace_whole(path: Path, data: bytes) -> None:
    """Write the file so that nobody, at any moment, finds half of it.

    A link is followed. A file that exists keeps its permissions. Raises OSError, with the path
    and a reason that a person can act on, and leaves what was there.
    """
    target = Path(os.path.realpath(path))
    mode = _mode_of(target, path)
    part = target.parent / f".{secrets.token_hex(8)}.part"
    try:
        # Created as the target would be, so that the user's own mask decides who may read it.
        with open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            part.chmod(mode)
        part.replace(target)
    except BaseException as fault:
        part.unlink(missing_ok=True)
        if isinstance(fault, OSError):
            raise _refusal(fault.errno or errno.EIO, path, fault.strerror or str(fault)) from fault
        raise


def _mode_of(target: Path, path: Path) -> int | None:
    # The permissions of the file that will be replaced; None when there is none.
    try:
        found = target.stat()
    except FileNotFoundError:
        if target.parent.is_dir():
            return None
        raise _refusal(errno.ENOENT, path, f"there is no folder {target.parent}") from None
    if stat.S_ISDIR(found.st_mode):
        raise _refusal(errno.EISDIR, path, "that is a folder; name a file in it")
    if not stat.S_ISREG(found.st_mode):
        raise _refusal(errno.EINVAL, path, "that is not an ordinary file")
    os.close(os.open(target, os.O_WRONLY))  # a file that may not be changed is not replaced
    return stat.S_IMODE(found.st_mode)


def _refusal(number: int, path: Path, reason: str) -> OSError:
    return OSError(number, reason, str(path))
