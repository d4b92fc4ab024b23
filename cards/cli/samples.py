"""`tagend samples`: the sample files, written ready to run."""

from importlib.resources import files
from pathlib import Path

import click

from tagend.cards.cli.disk import make_folder
from tagend.cards.cli.options import replace_option
from tagend.cards.cli.output import tell_written, write_outputs


@click.command("samples")
@click.argument("folder", metavar="DIR")
@replace_option
def command(folder: str, replace: bool) -> None:
    """Write sample recipes, a table of more, a rack and a shop file into DIR, ready to run."""
    target = Path(folder)
    contents = {
        str(target / source.name): source.read_bytes()
        for source in sorted(files("tagend.samples").iterdir(), key=lambda source: source.name)
        if source.name.endswith((".toml", ".csv", ".png"))
    }
    make_folder(folder)
    write_outputs(contents, replace=replace)
    tell_written(f"{len(contents)} files into {folder}")
