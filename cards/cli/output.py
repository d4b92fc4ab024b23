"""What a command writes: names and bytes in, files sealed and whole; nothing lost in silence.

A file is replaced where tagend made it and nobody changed it since, or where it is empty; any other
only with `--replace`, and what the command itself has read never.
"""

import os
from collections.abc import Mapping
from itertools import starmap
from pathlib import Path

from tagend.cards.cli.disk import was_read, write_whole
from tagend.cards.cli.seal import origin, sealed
from tagend.layouts.base.faults import Fault, refuse_any

_LOST = {
    "changed": "this file was changed since tagend wrote it",
    "not ours": "tagend did not make this file",
}


def write_output(name: str, data: bytes, *, replace: bool = False) -> None:
    """Write a file that a command was asked for; raises `Refused` where one would be lost."""
    write_outputs({name: data}, replace=replace)


def write_outputs(files: Mapping[str, bytes], *, replace: bool = False) -> None:
    """Write files; raises `Refused` for all that would be lost, and then writes none."""
    whole = {name: sealed(data) for name, data in files.items()}
    refuse_any(filter(None, (_clash(name, data, replace) for name, data in whole.items())))
    if len(whole) == 1:
        list(starmap(write_whole, whole.items()))
        return
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor(8) as pool:  # each waits for the disk, so they wait together
        list(pool.map(write_whole, whole, whole.values()))


def _clash(name: str, data: bytes, replace: bool) -> Fault | None:
    """Return what is lost if the file is replaced; None for what writing itself refuses."""
    if was_read(name):
        return Fault(name, "this is one of the files that it is made from", "name another file")
    if replace or not os.path.isfile(name):
        return None
    try:
        there = Path(name).read_bytes()
    except OSError as error:
        found = f"cannot be read, to see whose it is: {error.strerror}"
        return Fault(name, found, "name another file, or say --replace")
    if not there or there == data or origin(there) == "ours":
        return None
    return Fault(name, _LOST[origin(there)], "name another file, or say --replace")
