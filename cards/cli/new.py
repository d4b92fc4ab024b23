"""`tagend new`: a recipe asked for step by step, and written as a file."""

from collections.abc import Callable
from functools import partial
from typing import TypeVar

import click

from tagend.cards.base.units import parse_diameter, parse_span, parse_strength
from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.disk import mode_of, write_whole
from tagend.cards.cli.files import load_practice
from tagend.cards.cli.heed import tell
from tagend.cards.cli.options import replace_option, shop_option
from tagend.cards.cli.output import check_output
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import (
    NAME_MOST,
    NOTE_MOST,
    SECTIONS_MOST,
    Butt,
    Fly,
    Recipe,
    Section,
)
from tagend.cards.recipe.recipe_file import checked_whole
from tagend.cards.recipe.values import read_knot
from tagend.cards.recipe.vocabulary import EndOf
from tagend.layouts.base.faults import Refused, refused

T = TypeVar("T")


@click.command("new")
@click.option("-o", "--output", metavar="OUT.toml", help="The file to write; asked for otherwise.")
@replace_option
@shop_option
def command(output: str | None, replace: bool, shop: str | None) -> None:
    """Ask for a recipe step by step, and write its file. An empty answer leaves a thing out."""
    from tagend.cards.recipe.recipe_text import file_name, recipe_text

    practice = load_practice(shop)
    free = partial(_free, replace=replace)
    if output is not None:
        free(output)  # before anybody answers for nothing
    recipe = _ask_recipe(practice)
    path = output or _ask("File to write", free, file_name(recipe.name))
    # Without a checksum: nothing but the answers could make it again, so no command may replace it.
    write_whole(free(path), recipe_text(recipe).encode())
    tell([worksheet(recipe, practice)])
    click.echo(f"wrote {path}", err=True)


def _free(path: str, *, replace: bool) -> str:
    """Return the path; raises `Refused` where a file is, for answers can't be had again."""
    if mode_of(path) is not None and not replace:
        raise refused("this file is there already", "name another file, or say --replace", path)
    check_output(path, replace=replace)
    return path


def _ask_recipe(practice: Practice) -> Recipe:
    name = _ask("Name of the leader", lambda text: plain_text(text, NAME_MOST))
    use = _ask_maybe("What it is for", lambda text: plain_text(text, NOTE_MOST))
    butt = _ask_maybe("Loop at the butt, such as perfection loop", _knot("butt", practice))
    sections = _ask_sections(practice)
    fly = _ask_maybe("Knot to the fly, such as improved clinch", _knot("fly", practice))
    recipe = Recipe(name=name, sections=sections, use=use, butt=Butt(end=butt), fly=Fly(knot=fly))
    return checked_whole(recipe)


def _ask_sections(practice: Practice) -> tuple[Section, ...]:
    """Ask for sections from the butt to the fly, until a length is left empty."""
    sections: list[Section] = []
    click.echo("Sections from the butt to the fly; an empty length ends them.", err=True)
    while len(sections) < SECTIONS_MOST:
        asked = f"Section {len(sections) + 1}: length knot to knot, such as 30 in"
        length = (_ask_maybe if sections else _ask)(asked, parse_span)
        if length is None:
            break
        diameter = _ask("  diameter, such as 0.023 in or 4X", parse_diameter)
        material = _ask("  material, such as nylon", practice.material)
        strength = _ask_maybe("  strength, such as 25 lb", parse_strength)
        sections.append(
            Section(length=length, diameter=diameter, material=material, strength=strength)
        )
    return tuple(sections)


def _knot(end: EndOf, practice: Practice) -> Callable[[str], str]:
    return lambda text: read_knot(text, end, practice)


def _ask(question: str, read: Callable[[str], T], default: str = "") -> T:
    """Ask until the answer can be read."""
    while True:
        answer = _ask_maybe(question, read, default)
        if answer is not None:
            return answer
        click.echo("  this is needed", err=True)


def _ask_maybe(question: str, read: Callable[[str], T], default: str = "") -> T | None:
    """Ask until the answer can be read or is empty."""
    while True:
        text: str = click.prompt(
            question, default=default, show_default=bool(default), err=True
        ).strip()
        if not text:
            return None
        try:
            return read(text)
        except Refused as error:
            click.echo(f"  {error}", err=True)
