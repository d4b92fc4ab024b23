"""What a command writes: names and bytes in, files sealed and whole; nothing lost in silence.

A file is replaced where tagend made it and nobody changed it since, or where it is empty; any other
only with `--replace`, and what the command itself has read never.
"""

import sys
from collections.abc import Mapping
from itertools import starmap

import click

from tagend.cards.disk.disk import LARGEST, is_input, mode_of, not_written, write_whole
from tagend.cards.disk.seal import origin, sealed
from tagend.layouts.base.faults import Fault, noting, one_line, refuse_any, refused

STANDARD_OUTPUT = "-"

_LOST = {
    "changed": "this file was changed since tagend wrote it",
    "not ours": "nothing in this file says that tagend made it",
}


def write_output(name: str, data: bytes, *, replace: bool = False) -> None:
    """Write a file that a command was asked for, or to standard output for `-`.

    Raises `Refused` where a file would be lost, and where standard output is a terminal.
    """
    if name != STANDARD_OUTPUT:
        write_outputs({name: data}, replace=replace)
        return
    stream = getattr(sys.stdout, "buffer", None)  # which a terminal lacks; see `streams`
    if stream is None:
        raise refused("this is a terminal", "name a file, or send it on with | or >", "-o -")
    stream.write(sealed(data))
    stream.flush()


def is_svg(name: str | None) -> bool:
    """Say whether an output is to be an SVG, by the end of its name."""
    return name is not None and name.lower().endswith(".svg")


def called(name: str) -> str:
    """Return what an output is called in words."""
    return "standard output" if name == STANDARD_OUTPUT else name


def tell_written(words: str) -> None:
    """Say in one line what was written."""
    click.echo(one_line(f"wrote {words}"), err=True)


def named_file(output: str | None) -> None:
    """Raise `Refused` for `-` where a command says other things on standard output."""
    if output == STANDARD_OUTPUT:
        raise refused("standard output has what this command lists", "name a file", "-o -")


def write_outputs(files: Mapping[str, bytes], *, replace: bool = False) -> None:
    """Write files; raises `Refused` for all that would be lost, and then writes none."""
    whole = {name: sealed(data) for name, data in files.items()}
    faults: list[Fault] = []
    for name, data in whole.items():
        with noting(faults):
            check_output(name, data, replace=replace)
    refuse_any(faults)
    if len(whole) == 1:
        list(starmap(write_whole, whole.items()))
        return
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor(8) as pool:  # each waits for the disk, so they wait together
        list(pool.map(write_whole, whole, whole.values()))


def check_output(name: str, data: bytes = b"", *, replace: bool) -> None:
    """Raise `Refused` where the file cannot be written, or where something would be lost by it."""
    if name == STANDARD_OUTPUT or mode_of(name) is None:
        return
    if is_input(name):
        raise refused("this is one of the files that it is made from", "name another", name)
    if replace:
        return
    try:
        with open(name, "rb") as file:
            there = file.read(LARGEST)  # what is larger was not written here
    except OSError as error:
        raise not_written(name, error) from error
    if there in (b"", data) or (found := origin(there)) == "ours":
        return
    raise refused(_LOST[found], "name another file, or say --replace", name)
