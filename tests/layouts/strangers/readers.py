"""Readers that do what a parser may do over a file that was made to harm."""

import os
import signal
import sys
import time

from tagend.layouts.strangers.unreadable import Unreadable


def gives(data: bytes) -> list[object]:
    sys.stdout.write("a library that talks")
    os.write(1, b"and one that talks below it")
    return [data, len(data), {"text": "Łódź", "raw": data[:2]}]


def refuses(data: bytes) -> list[object]:
    raise Unreadable("it is too old", "save it anew")


def fails(data: bytes) -> list[object]:
    raise ZeroDivisionError


def hangs(data: bytes) -> list[object]:
    time.sleep(600)
    return []


def spins(data: bytes) -> list[object]:
    while True:
        pass


def crashes(data: bytes) -> list[object]:
    os.kill(os.getpid(), signal.SIGSEGV)
    return []


def hoards(data: bytes) -> list[object]:
    return [b"\x01" * (4 << 30)]


def leaves(data: bytes) -> list[object]:
    """End the process without an answer, as a library may."""
    os._exit(0)


def writes(data: bytes) -> list[object]:
    with open(data.decode(), "wb") as file:
        file.write(b"something")
    return []


def loaded(data: bytes) -> list[str]:
    """Return what of these the process has loaded."""
    return sorted({"pytest", "reportlab", "PIL", "tagend.cards"} & {*sys.modules})
