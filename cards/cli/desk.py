"""`tagend desk`: the page, served on this machine alone."""

from pathlib import Path

import click

from tagend.layouts.base.faults import refused


@click.command("desk")
@click.argument("folder", metavar="[FOLDER]", default=".")
@click.option("--port", type=click.IntRange(0, 65535), default=0, metavar="N",
              help="Listen on this port; 0, as if left out, is any that is free.")  # fmt: skip
@click.option("--no-open", is_flag=True, help="Only print the address; open no browser.")
def command(folder: str, port: int, no_open: bool) -> None:
    """Open the page for the leaders in FOLDER, or in this one; Ctrl-C ends it.

    Its address is on standard output. It answers nobody but whoever has that address, on this
    machine, and needs no network.
    """
    if not Path(folder).is_dir():
        raise refused("there is no such folder", "make it first, or name another", folder)
    try:
        from tagend.cards.desk.server import serve
    except ImportError:
        raise refused(
            "the desk needs some more packages", "run: pip install 'tagend[desk]'"
        ) from None
    from tagend.cards.desk.desk import Desk

    serve(Desk(Path(folder)), port, click.echo, browse=not no_open)
