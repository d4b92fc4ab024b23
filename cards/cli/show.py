"""What was written opened by the program that the system has for it, where a person asks so."""

import os

import click


def _note(context: click.Context, _: click.Parameter, asked: bool) -> None:
    context.meta[__name__] = asked


show_option = click.option(
    "--show", is_flag=True, expose_value=False, callback=_note, help="Then open what was written."
)


def show_if_asked(name: str) -> None:
    """Open a file that was written, or say that nothing here opens it."""
    context = click.get_current_context(silent=True)
    if context and context.meta.get(__name__) and click.launch(os.path.abspath(name)):
        click.echo(
            f"nothing here opens {name}; look at it with any program for such files", err=True
        )
