import os
import subprocess
import sys
from pathlib import Path

import pytest

from tagend.cards.cli import COMMANDS
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
        (["cards", "x.toml"], "tagend cards: Missing option '-o' / '--output'."),
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
