"""`--show` opens what was written; while a person waits long, a terminal says so."""

import os
import subprocess
import sys
from pathlib import Path

import click
import pytest

from tests.cards.cli.conftest import Tagend


@pytest.mark.parametrize(
    "words",
    [
        ("cards", "sandbar-eight.toml"),
        ("labels", "sandbar-eight.toml"),
        ("compare", "sandbar-eight.toml", "reedbed-six.toml"),
        ("calibrate",),
        ("stock", "letter-3x10-66.7x25.4"),
    ],
)
def test_what_was_written_is_opened_where_it_is_asked_for(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    opened: list[str] = []
    monkeypatch.chdir(demo)

    def launch(name: str) -> int:
        opened.append(name)
        return 0

    monkeypatch.setattr(click, "launch", launch)
    assert tagend(*words, "-o", "out.pdf").status == 0
    assert opened == []
    assert tagend(*words, "-o", "out.pdf", "--show").status == 0
    assert opened == [str(demo / "out.pdf")]


def test_where_nothing_opens_it_that_is_said(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(click, "launch", lambda name: 1)
    run = tagend("cards", demo / "sandbar-eight.toml", "-o", demo / "out.pdf", "--show")
    assert run.status == 0
    assert "nothing here opens" in run.err


@pytest.mark.skipif(sys.platform == "win32", reason="has no such terminal")
def test_a_terminal_says_how_long_the_work_takes_and_then_forgets_it() -> None:
    import pexpect

    code = (
        "import time; from tagend.cards.cli import at_work; at_work._SILENT = 0.1;"
        "at_work._EVERY = 0.1\n"
        "with at_work.at_work(): time.sleep(1)\n"
        "print('made')"
    )
    talk = pexpect.spawn(
        sys.executable, ["-c", code], encoding="utf-8", timeout=30, env={**os.environ}
    )
    talk.expect(r"at work for \d s")
    talk.expect(r"\r +\rmade")
    talk.close()
    piped = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert (piped.stdout, piped.stderr) == ("made\n", "")
