"""A command is tested, told of in the README and, where it prints, shown in the gallery."""

import re
from importlib import import_module
from pathlib import Path

import click
import pytest

from tagend.cards.cli import COMMANDS
from tagend.cards.cli.book import COMMANDS as OF_BOOK
from tagend.samples.gallery.make import PICTURES
from tests.tree import ROOT

CLI = Path("cards", "cli")
# As they are typed.
TYPED = (*COMMANDS, *(f"book {name}" for name in OF_BOOK))


def command_of(typed: str) -> click.Command:
    command: click.Command = import_module(f"tagend.cards.cli.{typed.replace(' ', '.')}").command
    return command


def prints(typed: str) -> bool:
    """Whether a command writes a PDF as its output."""
    outputs = [param for param in command_of(typed).params if "-o" in param.opts]
    return any((param.metavar or "").lower().endswith(".pdf") for param in outputs)


@pytest.mark.parametrize(("folder", "commands"), [(CLI, COMMANDS), (CLI / "book", OF_BOOK)])
def test_every_module_that_holds_a_command_is_among_the_commands(
    folder: Path, commands: tuple[str, ...]
) -> None:
    modules = [*(ROOT / folder).glob("*.py"), *(ROOT / folder).glob("*/__init__.py")]
    holding = {
        path.stem if path.stem != "__init__" else path.parent.name
        for path in modules
        if "\ndef command(" in path.read_text()
    }
    assert holding - {folder.name} == set(commands)


@pytest.mark.parametrize("typed", TYPED)
def test_a_command_has_a_test_file_and_help(typed: str) -> None:
    *folder, name = typed.split()
    tests = ROOT.joinpath("tests", CLI, *folder)
    assert (tests / f"test_{name}.py").is_file() or (tests / name / "conftest.py").is_file()
    assert command_of(typed).help
    options = [param for param in command_of(typed).params if isinstance(param, click.Option)]
    assert all(param.help for param in options)


@pytest.mark.parametrize("typed", TYPED)
def test_the_readme_tells_of_a_command(typed: str) -> None:
    assert re.search(rf"tagend {typed}\b", (ROOT / "README.md").read_text())


@pytest.mark.parametrize("typed", [typed for typed in TYPED if prints(typed)])
def test_the_gallery_shows_what_a_command_prints(typed: str) -> None:
    assert any(picture.command.startswith(f"{typed} ") for picture in PICTURES)


def test_the_readme_shows_every_picture() -> None:
    shown = re.findall(r"samples/gallery/([\w-]+)\.png", (ROOT / "README.md").read_text())
    assert {picture.name for picture in PICTURES} <= set(shown)
