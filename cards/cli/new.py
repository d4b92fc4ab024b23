"""`tagend new`: a recipe asked for step by step, shown as it grows, and written as a file."""

from functools import partial
from pathlib import Path

import click

from tagend.cards.cli.command_line import command_line
from tagend.cards.cli.dialogue import hold
from tagend.cards.cli.files import load_practice, load_rack
from tagend.cards.cli.new_questions import ask_new
from tagend.cards.cli.options import rack_option, replace_option, shop_option
from tagend.cards.cli.output import check_output, named_file, tell_written
from tagend.cards.disk.disk import mode_of, write_whole
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.layouts.base.faults import refused


@click.command("new")
@click.option("-o", "--output", metavar="OUT.toml", help="The file to write; asked for otherwise.")
@rack_option
@replace_option
@shop_option
def command(output: str | None, rack: str | None, replace: bool, shop: str | None) -> None:
    """Ask for a recipe step by step, show it as it grows, and write its file.

    A section is typed as on paper, `46 in .023 hard nylon 25lb`, in any order. With a rack, pounds
    alone are enough where one of its spools has them.
    """
    practice = load_practice(shop)
    free = partial(_free, replace=replace)
    if output is not None:
        free(output)  # before anybody answers for nothing
    questions = partial(ask_new, practice, load_rack(rack, practice), free, output)
    recipe, path = hold(questions)
    # Without a checksum: nothing but the answers could make it again, so no command may replace it.
    write_whole(path, recipe_text(recipe).encode())
    card = f"{path.removesuffix('.toml')}.pdf"
    tell_written(f"{path}; next: {command_line('cards', path, '-o', card)}")


def _free(path: str, *, replace: bool) -> str:
    """Return the path of a recipe file; raises `Refused` where a file is."""
    named_file(path)
    path = path if Path(path).suffix else f"{path}.toml"
    if mode_of(path) is not None and not replace:
        raise refused("this file is there already", "name another file, or say --replace", path)
    check_output(path, replace=replace)
    return path
