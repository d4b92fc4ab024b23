"""`tagend samples`: the sample files, written ready to run."""

from importlib.resources import files
from pathlib import Path

import click

from tagend.cards.cli.options import replace_option
from tagend.cards.cli.output import write_outputs
from tagend.layouts.base.faults import refused


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
    _make(target)
    write_outputs(contents, replace=replace)
    click.echo(f"wrote {len(contents)} files into {folder}", err=True)


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refused(
            f"cannot be made: {error.strerror}", "name a folder you may write to", str(folder)
        ) from None
