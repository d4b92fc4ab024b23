"""`tagend samples`: the sample files, written ready to run."""

from importlib.resources import files
from pathlib import Path

import click

from tagend.cards.cli.disk import write_whole
from tagend.layouts.base.faults import refused


@click.command("samples")
@click.argument("folder", metavar="DIR")
def command(folder: str) -> None:
    """Write sample recipes, a table of more, a rack and a shop file into DIR, ready to run.

    Files of the same names are replaced only when they are the samples themselves.
    """
    target = Path(folder)
    contents = {
        source.name: source.read_bytes()
        for source in sorted(files("tagend.samples").iterdir(), key=lambda source: source.name)
        if source.name.endswith((".toml", ".csv", ".png"))
    }
    _make(target)
    for name, data in contents.items():
        if _is_yours(target / name, data):
            raise refused(
                "this file is there already, and is yours",
                "name another folder, or move it away",
                str(target / name),
            )
    for name, data in contents.items():
        write_whole(str(target / name), data)
    click.echo(f"wrote {len(contents)} files into {folder}", err=True)


def _is_yours(path: Path, sample: bytes) -> bool:
    """Whether anything but the sample stands there."""
    try:
        return path.read_bytes() != sample
    except FileNotFoundError:
        return False
    except OSError:  # a folder, or a file that this person may not read
        return True


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refused(
            f"cannot be made: {error.strerror}", "name a folder you may write to", str(folder)
        ) from None
