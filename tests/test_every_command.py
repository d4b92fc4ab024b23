"""A command is tested, told of in the README and, where it prints, shown in the gallery."""

import re

import click
import pytest

from tagend.cards.cli import COMMANDS, commands
from tagend.samples.gallery.make import PICTURES
from tests.tree import ROOT


def command_of(name: str) -> click.Command:
    command = commands.get_command(click.Context(commands), name)
    assert command is not None
    return command


def prints(name: str) -> bool:
    """Whether a command writes a PDF."""
    metavars = (param.metavar or "" for param in command_of(name).params)
    return any(metavar.lower().endswith(".pdf") for metavar in metavars)


def test_every_module_that_holds_a_command_is_among_the_commands() -> None:
    modules = (ROOT / "cards" / "cli").glob("*.py")
    holding = {path.stem for path in modules if "\ndef command(" in path.read_text()}
    assert holding == set(COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_has_a_test_file_and_help(name: str) -> None:
    assert (ROOT / "tests" / "cards" / "cli" / f"test_{name}.py").is_file()
    assert command_of(name).help
    assert all(param.help for param in command_of(name).params if isinstance(param, click.Option))


@pytest.mark.parametrize("name", COMMANDS)
def test_the_readme_tells_of_a_command(name: str) -> None:
    assert re.search(rf"tagend {name}\b", (ROOT / "README.md").read_text())


@pytest.mark.parametrize("name", [name for name in COMMANDS if prints(name)])
def test_the_gallery_shows_what_a_command_prints(name: str) -> None:
    assert name in {picture.command.split()[0] for picture in PICTURES}


def test_the_readme_shows_every_picture() -> None:
    shown = re.findall(r"samples/gallery/([\w-]+)\.png", (ROOT / "README.md").read_text())
    assert {picture.name for picture in PICTURES} <= set(shown)
