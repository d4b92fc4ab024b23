"""`tagend samples`: the sample files, written ready to run."""

from pathlib import Path

import click

from tagend.cards.cli.options import replace_option
from tagend.cards.cli.output import tell_written, write_outputs
from tagend.cards.disk.disk import make_folder
from tagend.cards.disk.sample_files import sample_files


@click.command("samples")
@click.argument("folder", metavar="DIR")
@replace_option
def command(folder: str, replace: bool) -> None:
    """Write sample recipes, a table of more, a rack and a shop file into DIR, ready to run."""
    target = Path(folder)
    contents = {str(target / name): data for name, data in sample_files()}
    make_folder(folder)
    write_outputs(contents, replace=replace)
    tell_written(f"{len(contents)} files into {folder}")
