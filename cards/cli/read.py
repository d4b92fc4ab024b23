"""`tagend read`: a recipe file back from a code's text, a picture of it, or one of our PDFs."""

import os
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli.files import load_practice, naming
from tagend.cards.cli.options import replace_option, shop_option
from tagend.cards.cli.output import write_output
from tagend.cards.cli.recipe_folder import write_each
from tagend.cards.disk.disk import read_bytes
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.layouts.base.faults import refused

if TYPE_CHECKING:
    from tagend.cards.printing.recover import Recovered


@click.command("read")
@click.argument("source", metavar="SOURCE")
@click.option("-o", "--output", metavar="OUT", help="The recipe file to write, or a folder.")
@click.option("--check", is_flag=True, help="Only say what SOURCE holds; write nothing.")
@click.option("--keep-tied", is_flag=True, help="Keep the day it was tied in the recipe.")
@click.option(
    "--book", metavar="FILE", envvar="TAGEND_BOOK", help="Say which leaders of this book hold it."
)
@replace_option
@shop_option
def command(
    source: str,
    output: str | None,
    check: bool,
    keep_tied: bool,
    book: str | None,
    replace: bool,
    shop: str | None,
) -> None:
    """Write the recipe in SOURCE as a recipe file.

    SOURCE is a code's text, a text file that holds one, a picture of one or more codes (PNG,
    JPEG), a PDF that tagend made, or `-` for standard input. Several recipes go into a folder.
    """
    if check and output is not None:
        raise click.UsageError("--check writes nothing: leave -o out.")
    practice = load_practice(shop)
    found = _found(source, practice)
    for text in found.strangers:
        click.echo(f"left out a code that is not one of a label: {text}", err=True)
    for line in found.changed:
        click.echo(line, err=True)
    if book is not None:
        _tell_holders(found.recipes, book, practice)
    if check:
        for recipe in found.recipes:
            click.echo(f"{found.what}: {', '.join(_told(recipe))}")
    else:
        recipes = found.recipes if keep_tied else _untied(found.recipes)
        _write(recipes, source, output, replace)


def _told(recipe: Recipe) -> Iterator[str]:
    yield recipe.name
    yield counted(len(recipe.sections), "section")
    if recipe.tied is not None:
        yield f"tied {recipe.tied}"


def _untied(recipes: Sequence[Recipe]) -> Sequence[Recipe]:
    """Return the recipes without the days they were tied, each once, and say so."""
    from tagend.cards.printing.recover import untied

    for day in sorted({recipe.tied for recipe in recipes if recipe.tied is not None}):
        found = f"tied {day} left out: a leader tied again has a day of its own"
        click.echo(f"{found}; --keep-tied keeps it", err=True)
    return untied(recipes)


def _tell_holders(recipes: Sequence[Recipe], book: str, practice: Practice) -> None:
    """Say which leaders of the book hold the recipes, for the person to pick."""
    from tagend.cards.book.file import opened
    from tagend.cards.book.holders import held_in
    from tagend.cards.book.naming import ranges

    with opened(book) as db:
        for recipe in recipes:
            batches = held_in(db, recipe, practice)
            for batch, numbers in batches.items():
                click.echo(f"{recipe.name}: batch {batch}, no. {ranges(numbers)}", err=True)
                click.echo(f"tie one again: tagend book tie --again {numbers[0]}", err=True)
            if not batches:
                click.echo(f"{recipe.name}: no leader of {book} holds it", err=True)


def _found(source: str, practice: Practice) -> "Recovered":
    from tagend.cards.printing.recover import looks_like_code, recipes_in

    if source != "-" and looks_like_code(source) and not os.path.exists(source):
        return recipes_in(source.encode(), practice)
    with naming(source):
        return recipes_in(read_bytes(source), practice)


def _write(recipes: Sequence[Recipe], source: str, output: str | None, replace: bool) -> None:
    if output is not None and (len(recipes) > 1 or os.path.isdir(output)):
        write_each(recipes, output, replace=replace)
        return
    if len(recipes) > 1:
        names = ", ".join(file_name(recipe.name) for recipe in recipes)
        raise refused(f"it holds {len(recipes)} recipes ({names})", "give a folder with -o", source)
    text = recipe_text(recipes[0])
    if output is None:
        click.echo(text, nl=False)
    else:
        write_output(output, text.encode(), replace=replace)
