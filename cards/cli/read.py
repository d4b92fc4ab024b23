"""`tagend read`: a recipe file back from a code's text or from one of our PDFs."""

import os
from itertools import chain, count

import click

from cards.cli.files import load_practice, naming, read_bytes, shop_option, write_whole
from cards.errors import refused
from cards.practice import Practice
from cards.recipe import Recipe
from cards.recipe_text import recipe_text


@click.command("read")
@click.argument("source", metavar="SOURCE")
@click.option("-o", "--output", metavar="OUT", help="The recipe file to write, or a folder.")
@shop_option
def command(source: str, output: str | None, shop: str | None) -> None:
    """Write the recipe in SOURCE as a recipe file.

    SOURCE is a code's text, a text file that holds one, a PDF that tagend made, or `-` for
    standard input. Several recipes go into a folder.
    """
    practice = load_practice(shop)
    found = _recipes(source, practice)
    if output is not None and (len(found) > 1 or os.path.isdir(output)):
        _write_each(found, output)
        return
    if len(found) > 1:
        names = ", ".join(name for name, _ in found)
        raise refused(f"it holds {len(found)} recipes ({names})", "give a folder with -o", source)
    text = recipe_text(found[0][1])
    if output is None:
        click.echo(text, nl=False)
    else:
        write_whole(output, text.encode())


def _recipes(source: str, practice: Practice) -> list[tuple[str, Recipe]]:
    """Return the recipes in a source, each with a file name."""
    from cards.reading import looks_like_code, recipes_in

    if source != "-" and looks_like_code(source) and not os.path.exists(source):
        return recipes_in(source.encode(), practice)
    with naming(source):
        return recipes_in(read_bytes(source), practice)


def _write_each(found: list[tuple[str, Recipe]], folder: str) -> None:
    if not os.path.isdir(folder):
        raise refused("this is not a folder", "make it first, or name another", folder)
    written: set[str] = set()
    for name, recipe in found:
        own_name = _unlike(written, name)
        write_whole(os.path.join(folder, own_name), recipe_text(recipe).encode())
        written.add(own_name)
    click.echo(f"wrote {len(written)} recipes into {folder}", err=True)


def _unlike(written: set[str], name: str) -> str:
    """Return the name, numbered where another recipe has it: `sandbar-eight-2.toml`."""
    stem = name.removesuffix(".toml")
    numbered = (f"{stem}-{number}.toml" for number in count(2))
    return next(choice for choice in chain([name], numbered) if choice not in written)
