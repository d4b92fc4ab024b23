"""A stranger's bytes and a reader of ours in; what it gives out, read in a process of its own.

A parser of pictures or pages may crash, hang or take all memory over a file that was made to do
so. Here that ends the child process alone, and in one line that a person can act on.
"""

import sys
from base64 import b64decode
from collections.abc import Callable
from typing import TypeVar

from tagend.layouts.strangers.unreadable import Unreadable

SECONDS = 5
MEMORY = 512 << 20  # bytes; where the system can hold a process to it

# The child knows nothing of how this program was started: it is given where modules are found.
_START = (
    "import json, sys; task = json.loads(sys.stdin.buffer.readline()); sys.path[:] = task['path']; "
    "from tagend.layouts.strangers.child import run; run(task)"
)
_SIMPLER = "simplify it or make it smaller, or save it as a file of another kind"

Given = TypeVar("Given")  # of lists, dictionaries, text, numbers and bytes


def apart(reader: Callable[[bytes], Given], data: bytes, seconds: float = SECONDS) -> Given:
    """Return what a reader, a function at the head of a module, gives of the data.

    Raises `Unreadable`: by the reader's own word, or when it fails, or when it takes more than
    so many seconds or MEMORY.
    """
    import json  # a usual print has no stranger's file, and does not wait for these
    import subprocess

    task = {
        "path": sys.path,
        "module": reader.__module__,
        "reader": reader.__name__,
        "seconds": seconds,
        "memory": MEMORY,
    }
    command = [sys.executable, "-I", "-B", "-c", _START]
    try:
        done = subprocess.run(
            command,
            input=json.dumps(task).encode() + b"\n" + data,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            timeout=seconds,
        )
    except subprocess.TimeoutExpired:
        raise Unreadable(f"it takes longer than {int(seconds)} s to read", _SIMPLER) from None
    try:
        answer = json.loads(done.stdout, object_hook=_bytes_again)
    except ValueError:  # it did not come to its answer's end
        found = f"its reader broke off, or wanted more than {MEMORY >> 20} MB"
        raise Unreadable(found, _SIMPLER) from None
    if "refused" in answer:
        raise Unreadable(*answer["refused"])
    given: Given = answer["given"]
    return given


def _bytes_again(written: dict[str, object]) -> object:
    """Return what the child wrote of bytes, which JSON has no word for."""
    base64 = written.get("base64")
    return b64decode(base64) if isinstance(base64, str) else written
