"""What the Tab key offers, as a shell asks for it."""

import os
import subprocess
import sys

import pytest


def offered(words: str, shell: str = "bash", **more: str) -> list[str]:
    """Return what is offered behind these words; the last is being typed."""
    environment = {
        **os.environ,
        "_TAGEND_COMPLETE": f"{shell}_complete",
        "COMP_WORDS": words,
        "COMP_CWORD": str(words.count(" ")),
        **more,
    }
    run = subprocess.run(
        [sys.executable, "-m", "tagend.cards"],
        env=environment,
        capture_output=True,
        text=True,
        check=True,
        encoding="utf-8",
    )
    return run.stdout.splitlines()


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("tagend la", "plain,labels"),
        ("tagend cards ", "file,"),
        ("tagend labels --stock letter-3x10", "plain,letter-3x10-66.7x25.4"),
        ("tagend cards --size id", "plain,ID-1"),
        ("tagend cards --paper A", "plain,A4"),
        ("tagend stock letter-3x10", "plain,letter-3x10-66.7x25.4"),
        ("tagend learn imp", "plain,improved clinch"),
        ("tagend cuts --rack ra", "file,ra"),
        ("tagend book re", "plain,recall"),
    ],
)
def test_names_are_completed(words: str, expected: str) -> None:
    assert expected in offered(words)


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_a_shell_is_told_how_to_ask(shell: str) -> None:
    run = subprocess.run(
        [sys.executable, "-m", "tagend.cards"],
        env={**os.environ, "_TAGEND_COMPLETE": f"{shell}_source"},
        capture_output=True,
        text=True,
        check=True,
        encoding="utf-8",
    )
    assert "_TAGEND_COMPLETE" in run.stdout
