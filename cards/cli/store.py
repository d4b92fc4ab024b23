"""Texts into a table of a person's shop file, of which all else stays as it is, byte for byte."""

from collections.abc import Mapping

import click

from tagend.cards.base.toml_edit import with_value
from tagend.cards.base.toml_file import read_toml
from tagend.cards.cli.files import naming
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.layouts.base.faults import Fault, refuse_any


def store(name: str, table: str, texts: Mapping[str, str], *, replace: bool) -> None:
    """Set the texts and say so; no other run comes between reading and writing.

    Raises `Refused` where the file says something else already, unless that may be replaced.
    """
    with alone(name):
        with naming(name):
            data = read_bytes(name)
            was = _others(read_toml(data).get(table), texts)
            if not replace:
                refuse_any(
                    Fault(f"[{table}] {key}", f"was {old}, now {texts[key]!r}", "say --replace")
                    for key, old in was.items()
                )
            for key in reversed(list(texts)):  # each new one goes first
                data = with_value(data, table, key, texts[key])
        write_whole(name, data)
    told = (
        f"{key} = {text!r}" + (f" (was {was[key]})" if key in was else "")
        for key, text in texts.items()
    )
    click.echo(f"stored in {name}: [{table}] {', '.join(told)}", err=True)


def _others(there: object, texts: Mapping[str, str]) -> dict[str, str]:
    """Return what the table says under these keys and is not their text, as it is told."""
    values = there if isinstance(there, Mapping) else {}
    return {key: _told(values[key]) for key in texts if key in values and values[key] != texts[key]}


def _told(value: object) -> str:
    if isinstance(value, Mapping):
        return " and ".join(f"{key} {_told(inner)}" for key, inner in value.items())
    return repr(value)
