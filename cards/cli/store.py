"""Texts into a table of a person's shop file, of which all else stays as it is, byte for byte."""

from collections.abc import Mapping

import click

from tagend.cards.base.toml_store import stored
from tagend.cards.cli.files import naming
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone


def store(name: str, table: str, texts: Mapping[str, str], *, replace: bool) -> None:
    """Set the texts and say so; no other run comes between reading and writing.

    Raises `Refused` where the file says something else already, unless that may be replaced.
    """
    with alone(name):
        with naming(name):
            after = stored(read_bytes(name), table, texts, replace=replace)
        write_whole(name, after.data)
    click.echo(f"stored in {name}: {after.told}", err=True)
