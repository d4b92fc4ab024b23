"""Each command's help shows two examples, and each of them runs beside the sample files."""

import shlex
from pathlib import Path

import pytest

from tagend.cards.cli.lazy import examples
from tests.cards.cli.conftest import Tagend
from tests.test_every_command import TYPED

NEEDS = {"read": "tagend labels sandbar-eight.toml -o labels.pdf"}
# These change a book, one after another.
OF_BOOK = [name for name in TYPED if name.startswith("book ")]
SERVING = ("desk",)  # until a person ends it; its own tests run its examples


def test_every_command_has_two() -> None:
    assert sorted(examples()) == sorted(TYPED)
    assert all(len(lines) == 2 for lines in examples().values())
    assert all(shlex.split(line)[0] == "tagend" for lines in examples().values() for line in lines)


def run(tagend: Tagend, line: str) -> None:
    words = shlex.split(line)[1:]
    answers = b"Alder run\n\n\n\n30 in 0.021 in nylon\n" if words[0] == "new" else b"Low Tide\n"
    outcome = tagend(*(word for word in words if word != "--show"), stdin=answers)
    assert outcome.status == 0, f"{line}: {outcome.err}"


@pytest.mark.parametrize("typed", [name for name in TYPED if name not in (*OF_BOOK, *SERVING)])
def test_the_examples_run_and_are_shown(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch, typed: str
) -> None:
    monkeypatch.chdir(demo)
    (demo / "demo").mkdir()
    shown = tagend(typed, "--help").out
    for line in filter(None, (NEEDS.get(typed), *examples()[typed])):
        assert line in shown or line == NEEDS.get(typed)
        run(tagend, line)


def test_the_examples_of_the_book_run_one_after_another(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(demo)
    for typed in OF_BOOK:
        shown = tagend(*typed.split(), "--help").out
        for line in examples()[typed]:
            assert line in shown
            run(tagend, line)
