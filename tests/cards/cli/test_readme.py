"""The README's walk-throughs run as they stand, and what it shows of the terminal comes out."""

import re
import shlex
from collections.abc import Iterator
from glob import glob
from pathlib import Path

import click
import pytest

from tagend.cards.cli import dialogue
from tests.cards.cli.conftest import Outcome, Tagend
from tests.tree import ROOT

README = (ROOT / "README.md").read_text("utf-8")
WALKS = {
    title: re.findall(r"```console\n(.*?)```", text, re.DOTALL)
    for title, text in re.findall(r"^## ([^\n]*)\n(.*?)(?=^## )", README, re.MULTILINE | re.DOTALL)
    if "```console" in text
}
GAP = "…"


def commands(block: str) -> Iterator[tuple[str, list[str]]]:
    """Yield each command of a block, and the lines that it is shown to say."""
    for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
        command, *shown = part.rstrip("\n").split("\n")
        yield command, [line.rstrip() for line in shown]


def words(command: str) -> Iterator[str]:
    """Yield the words of a command, as a shell gives them on."""
    for word in shlex.split(command):
        yield from sorted(glob(word)) if "*" in word else (word,)


def says(run: Outcome, shown: list[str]) -> bool:
    """Whether a run says the lines that are shown, on either stream first."""
    pattern = "\n".join(re.escape(line) for line in shown).replace(re.escape(GAP), ".*")
    said = (
        "\n".join(line.rstrip() for line in text.splitlines())
        for text in (run.out + run.err, run.err + run.out)
    )
    return not shown or any(re.fullmatch(pattern, text, re.DOTALL) for text in said)


@pytest.mark.parametrize("title", WALKS)
def test_a_walk_through_goes_as_it_is_shown(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch, title: str
) -> None:
    monkeypatch.chdir(demo.parent)
    for command, shown in (pair for block in WALKS[title] for pair in commands(block)):
        name, *rest = words(command)
        if name == "export":
            monkeypatch.setenv(*rest[0].split("=", 1))
            continue
        assert name == "tagend"

        def answer(asked: str, shown: list[str] = shown) -> str:
            """Answer a question as it is answered in what is shown."""
            typed = [line for line in shown if line.startswith(f"{asked}:")]
            reply = typed[0].removeprefix(f"{asked}:").strip() if typed else ""
            click.echo(f"{asked}: {reply}", err=True)
            return reply

        monkeypatch.setattr(dialogue, "_line", answer)
        run = tagend(*rest)
        assert run.status == 0, f"{command}: {run.err}"
        assert says(run, shown), f"{command}\n{run.out}{run.err}"


def test_there_is_a_walk_through_for_each_kind_of_user() -> None:
    assert [title.split(":")[0] for title in WALKS] == ["An angler", "A guide", "A shop"]
