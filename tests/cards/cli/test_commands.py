import os
import subprocess
import sys
from importlib import import_module
from pathlib import Path

import pytest

from tagend.cards.cli import COMMANDS
from tagend.cards.words.language import languages
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT


def spawn(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """Run the command as a person does, in a process of its own."""
    program = [sys.executable, "-m", "tagend.cards"]
    return subprocess.run(
        [*program, *map(str, arguments)],
        cwd=ROOT,
        env={**os.environ, "PYTHONUTF8": "1"},
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


@pytest.mark.parametrize(
    ("arguments", "fault"),
    [
        (["chekc"], "tagend: No such command 'chekc'"),
        (["--colour"], "tagend: No such option"),
        (["check", "--jsno"], "tagend check: No such option"),
        (["cuts", "--json"], "tagend cuts: Missing argument 'RECIPE...'."),
        (["cards", "x.toml"], "tagend cards: Missing option '-o' / '--output' or '--plan'."),
        (["samples", "here", "there"], "tagend samples: Got unexpected extra argument"),
        (["check", "--shop"], "tagend: Option '--shop' requires an argument."),
    ],
)
def test_a_wrong_call_is_told_in_one_line(tagend: Tagend, arguments: list[str], fault: str) -> None:
    run = tagend(*arguments)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(fault)
    assert line.endswith("--help'.")


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help(tagend: Tagend, command: str) -> None:
    run = tagend(command, "--help")
    assert (run.status, run.err) == (0, "")
    assert run.out.startswith(f"Usage: tagend {command} ")


# By command: what it needs besides its shop file.
WITH_A_SHOP = {
    "bench": ("RECIPE", "-o", "OUT"),
    "calibrate": ("-o", "OUT"),
    "cards": ("RECIPE", "-o", "OUT"),
    "check": ("RECIPE",),
    "compare": ("RECIPE", "RECIPE", "-o", "OUT"),
    "counter": ("RECIPE", "-o", "OUT"),
    "cuts": ("RECIPE",),
    "labels": ("RECIPE", "-o", "OUT"),
    "learn": ("clinch", "--from", "9 in", "--to", "5 in"),
    "new": ("-o", "OUT"),
    "propose": ("--total", "9 ft", "--butt", "0.021 in", "--tippet", "4X", "-o", "OUT"),
    "read": ("RECIPE",),
    "renew": ("RECIPE",),
    "stock": ("A4", "-o", "OUT"),
    "table": ("RECIPE", "-o", "OUT"),
    "vary": ("RECIPE", "--total", "9 ft", "-o", "OUT"),
}


def test_every_command_with_a_shop_file_is_known_here() -> None:
    commands = {name: import_module(f"tagend.cards.cli.{name}").command for name in COMMANDS}
    with_a_shop = {
        name for name, command in commands.items() if any(p.name == "shop" for p in command.params)
    }
    assert with_a_shop == WITH_A_SHOP.keys()


@pytest.mark.parametrize("command", WITH_A_SHOP)
def test_a_language_that_is_not_there_is_refused_at_the_door(
    tagend: Tagend, demo: Path, command: str
) -> None:
    shop, out = demo / "other.toml", demo / "out.pdf"
    shop.write_text('language = "xx"\n')
    named = {"RECIPE": demo / "reedbed-six.toml", "OUT": out}
    words = [named.get(word, word) for word in WITH_A_SHOP[command]]
    run = tagend(command, *words, "--shop", shop)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(f"{shop}: language: no language is called 'xx'")
    assert all(language in line for language in languages())
    assert not out.exists()


def test_the_statuses_reach_the_shell(demo: Path) -> None:
    sound = spawn("check", demo / "reedbed-six.toml")
    wrong = spawn("check", demo / "hasty-seven.toml")
    missing = spawn("check", demo / "none.toml")
    assert [run.returncode for run in (sound, wrong, missing)] == [0, 1, 2]
    assert (sound.stderr, wrong.stderr, missing.stdout) == ("", "", "")
    assert "Traceback" not in missing.stderr


def test_nobody_minds_when_the_reader_goes_away(demo: Path) -> None:
    reader, writer = os.pipe()
    os.close(reader)
    run = subprocess.run(
        [sys.executable, "-m", "tagend.cards", "check", "--schema"],
        cwd=ROOT,
        stdout=writer,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
    )
    os.close(writer)
    assert run.stderr == ""
