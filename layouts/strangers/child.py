"""What runs in the child: a task and a file's bytes from standard input in, an answer out."""

import json
import os
import signal
import sys
from base64 import b64encode
from contextlib import suppress
from importlib import import_module
from typing import TypedDict

from tagend.layouts.strangers.unreadable import Unreadable


class Task(TypedDict):
    """Which function of which module shall read, and within which limits."""

    module: str
    reader: str
    seconds: float
    memory: int  # bytes


def run(task: Task) -> None:
    """Let the reader read all that follows on standard input, and write its answer as JSON."""
    _limit(task)
    # A library that prints must not disturb the answer.
    with os.fdopen(os.dup(1), "wb") as out:
        os.dup2(2, 1)
        answer = _answer(task, sys.stdin.buffer.read())
        out.write(json.dumps(answer, default=_written).encode())


def _answer(task: Task, data: bytes) -> dict[str, object]:
    try:
        return {"given": getattr(import_module(task["module"]), task["reader"])(data)}
    except Unreadable as refusal:
        return {"refused": [refusal.found, refusal.instead]}
    except MemoryError:
        raise
    except Exception:  # whatever a library meets in a stranger's bytes
        return {"refused": ["it is damaged or cut off", "save it again"]}


def _limit(task: Task) -> None:
    if sys.platform == "win32":  # where only the parent's clock ends this process
        return
    import resource

    signal.setitimer(signal.ITIMER_REAL, task["seconds"] + 1)  # when the parent is gone
    for limit, most in (
        (resource.RLIMIT_AS, task["memory"]),
        (resource.RLIMIT_FSIZE, 0),
        (resource.RLIMIT_CORE, 0),
    ):
        with suppress(ValueError, OSError):  # what a system cannot do, or does more strictly
            resource.setrlimit(limit, (most, most))


def _written(value: bytes) -> dict[str, str]:
    return {"base64": b64encode(value).decode()}
