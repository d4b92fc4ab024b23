"""Nothing is lost in silence: every command that writes, before a file that is there already."""

import ast
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import click
import pytest

from tagend.cards.cli import commands
from tagend.cards.disk.seal import sealed
from tests.cards.cli.conftest import Outcome, Tagend
from tests.fonts.made import truetype
from tests.tree import ROOT

ANSWERS = "Alder run\n\n\n\n30 in 0.021 in nylon\n"
PROPOSED = ("--total", "11 ft", "--butt", "0.023 in", "--tippet", "0.010 in fluorocarbon")

# By command: what it needs besides its output, and the output's name.
WRITING: dict[str, tuple[tuple[str, ...], str]] = {
    "book export": (("--book", "season.db"), "out.xlsx"),
    "book print": (("1", "--labels", "--book", "season.db"), "out.pdf"),
    "book recall": (("--lot", "K 114", "--book", "season.db"), "out.pdf"),
    "bench": (("sandbar-eight.toml", "--rack", "rack.toml"), "out.pdf"),
    "calibrate": ((), "out.pdf"),
    "cards": (("sandbar-eight.toml", "--rack", "rack.toml"), "out.pdf"),
    "compare": (("sandbar-eight.toml", "reedbed-six.toml"), "out.svg"),
    "counter": (("sandbar-eight.toml",), "out.pdf"),
    "labels": (("sandbar-eight.toml",), "out.pdf"),
    "new": ((), "out.toml"),
    "propose": (("--rack", "rack.toml", *PROPOSED), "out.toml"),
    "read": (("printed.pdf",), "out.toml"),
    "stock": (("A7",), "out.pdf"),
    "table": (("sandbar-eight.toml",), "out.csv"),
    "vary": (("sandbar-eight.toml", "--total", "9 ft"), "out.toml"),
}
STRICTER = {"new"}  # nothing but a person's answers could make it again
# What is said of a strange file, and of one that was changed, where that can be told.
STRANGE, CHANGED = "nothing in this file says that tagend made it", "this file was changed since"
SAID = {"new": ("this file is there already",) * 2, "table": (STRANGE, STRANGE)}


def writing(group: click.Group, *names: str) -> Iterator[tuple[str, click.Command]]:
    """Yield the commands that have an output, by the words that call them."""
    context = click.Context(group)
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        if isinstance(command, click.Group):
            yield from writing(command, *names, name)
        elif command is not None and any("--output" in param.opts for param in command.params):
            yield " ".join((*names, name)), command


FOUND = dict(writing(commands))


@pytest.mark.parametrize("name", FOUND)
def test_a_command_that_writes_may_be_told_to_replace_and_is_tried_below(name: str) -> None:
    assert any("--replace" in param.opts for param in FOUND[name].params)
    assert name in WRITING


def test_only_these_modules_write_without_looking() -> None:
    imported = {
        path.stem
        for path in (ROOT / "cards" / "cli").rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.ImportFrom) and node.module == "tagend.cards.disk.disk"
        if {alias.name for alias in node.names} & {"write_whole"}
    }
    assert imported == {"output", "store", "new", "shop", "table_reading"}


@pytest.fixture
def here(demo: Path, tagend: Tagend, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a folder with the samples, a book, and labels to read."""
    monkeypatch.chdir(demo)
    tagend("book", "start", "--rack", "rack.toml", "--book", "season.db")
    tagend("book", "tie", "sandbar-eight.toml=2", "--tied", "2026-03-14", "--book", "season.db")
    assert tagend("labels", "sandbar-eight.toml", "-o", "printed.pdf").status == 0
    return demo


def run(tagend: Tagend, name: str, *options: str) -> Outcome:
    needs, output = WRITING[name]
    answers = ANSWERS.encode() if name == "new" else b""
    return tagend(*name.split(), *needs, "-o", output, *options, stdin=answers)


def refuses(outcome: Outcome, output: Path, found: str) -> None:
    assert outcome.status == 2
    (line,) = outcome.faults
    assert line.startswith(f"{output.name}: {found}")
    assert line.endswith("name another file, or say --replace")


@pytest.mark.parametrize("name", WRITING)
def test_a_strangers_file_stays_unless_told(tagend: Tagend, here: Path, name: str) -> None:
    output = here / WRITING[name][1]
    output.write_bytes(b"a day's work")
    before = sorted(here.iterdir())
    refuses(run(tagend, name), output, SAID.get(name, (STRANGE, CHANGED))[0])
    assert output.read_bytes() == b"a day's work"
    assert sorted(here.iterdir()) == before
    assert run(tagend, name, "--replace").status == 0
    assert b"a day's work" not in output.read_bytes()


@pytest.mark.parametrize("name", WRITING)
def test_a_file_that_was_changed_stays_unless_told(tagend: Tagend, here: Path, name: str) -> None:
    output = here / WRITING[name][1]
    assert run(tagend, name).status == 0
    ours = output.read_bytes()
    changed = ours + b"\n# mine"
    output.write_bytes(changed)
    refuses(run(tagend, name), output, SAID.get(name, (STRANGE, CHANGED))[1])
    assert output.read_bytes() == changed
    assert run(tagend, name, "--replace").status == 0
    assert output.read_bytes() == ours


@pytest.mark.parametrize("name", [name for name in WRITING if name not in STRICTER])
@pytest.mark.parametrize("there", ["the same", "of another run", "empty"])
def test_what_can_be_made_again_is_written_anew(
    tagend: Tagend, here: Path, name: str, there: str
) -> None:
    output = here / WRITING[name][1]
    assert run(tagend, name).status == 0
    ours = output.read_bytes()
    if there == "of another run" and name != "table":  # a table can't say whose it is
        output.write_bytes(sealed(b'name = "Birch run"\n'))
    elif there == "empty":
        output.write_bytes(b"")
    assert run(tagend, name).status == 0
    assert output.read_bytes() == ours


def test_a_recipe_that_a_person_answered_for_is_lost_to_no_command(
    tagend: Tagend, here: Path
) -> None:
    assert run(tagend, "new").status == 0
    answered = (here / "out.toml").read_bytes()
    for name in ("propose", "read", "vary"):
        refuses(run(tagend, name), here / "out.toml", STRANGE)
    assert (here / "out.toml").read_bytes() == answered


def inputs(name: str) -> set[str]:
    """Return the files that a command reads: those it is given, its shop's, and its logo."""
    given = {word for word in WRITING[name][0] if word.endswith((".toml", ".db", "printed.pdf"))}
    return given | ({"shop.toml", "wrack-line.png"} if name != "book export" else set())


@pytest.mark.parametrize(
    ("name", "input_name"), [(name, one) for name in WRITING for one in sorted(inputs(name))]
)
@pytest.mark.parametrize("link", [os.link, os.symlink])
@pytest.mark.parametrize("options", [(), ("--replace",)])
def test_what_is_read_is_never_written(
    tagend: Tagend,
    here: Path,
    name: str,
    input_name: str,
    link: Callable[[Path, Path], None],
    options: tuple[str, ...],
) -> None:
    read = here / input_name
    link(read, here / WRITING[name][1])
    before = read.read_bytes()
    shop = () if name == "book export" else ("--shop", "shop.toml")
    outcome = run(tagend, name, *shop, *options)
    assert outcome.status == 2
    assert WRITING[name][1] in outcome.faults[0]
    assert read.read_bytes() == before
    assert read.samefile(here / WRITING[name][1])


def test_a_file_that_comes_on_standard_input_is_read_too(here: Path) -> None:
    recipe = here / "sandbar-eight.toml"
    before = recipe.read_bytes()
    program = [sys.executable, "-m", "tagend.cards", "cards", "-", "--replace", "-o", str(recipe)]
    with recipe.open("rb") as stdin:
        done = subprocess.run(program, stdin=stdin, capture_output=True, text=True, cwd=ROOT)
    assert done.returncode == 2
    assert "one of the files that it is made from" in done.stderr
    assert recipe.read_bytes() == before


def test_a_font_that_a_shop_names_is_read_too(tagend: Tagend, here: Path) -> None:
    font = truetype(here / "own.ttf", "Жук", "Own")
    before = font.read_bytes()
    (here / "own.toml").write_text('font = "own.ttf"\n')
    for command in ("cards", "bench"):
        outcome = tagend(
            *(command, "sandbar-eight.toml", "--shop", "own.toml", "-o", font, "--replace")
        )
        assert outcome.status == 2
        assert "one of the files that it is made from" in outcome.err
        assert font.read_bytes() == before


@pytest.mark.parametrize("name", ["/dev/null", "pipe"])
@pytest.mark.parametrize("options", [(), ("--replace",)])
def test_what_is_no_ordinary_file_is_refused(
    tagend: Tagend, here: Path, name: str, options: tuple[str, ...]
) -> None:
    os.mkfifo(here / "pipe")  # to read it would wait for ever
    outcome = tagend("cards", "sandbar-eight.toml", "-o", name, *options)
    assert outcome.status == 2
    assert outcome.faults[0].startswith(f"{name}: cannot be written: this is not an ordinary")


@pytest.mark.parametrize("output", ["shop.toml", "mine.pdf"])
def test_nothing_is_stored_where_the_page_beside_it_is_refused(
    tagend: Tagend, here: Path, output: str
) -> None:
    (here / "mine.pdf").write_bytes(b"mine")
    before = (here / "shop.toml").read_bytes()
    outcome = tagend("calibrate", "--store", "shop.toml", "--front-x", "1 mm", "-o", output)
    assert outcome.status == 2
    assert outcome.faults[0].startswith(f"{output}: ")
    assert (here / "shop.toml").read_bytes() == before


def test_a_dash_is_standard_output(here: Path) -> None:
    def piped(*words: str) -> subprocess.CompletedProcess[bytes]:
        command = [sys.executable, "-m", "tagend.cards", *words, "-o", "-"]
        return subprocess.run(command, cwd=here, capture_output=True, check=False)

    card = piped("cards", "sandbar-eight.toml")
    assert card.stdout.startswith(b"%PDF-")
    assert b"wrote standard output: 1 page" in card.stderr
    assert (
        b'name = "Sandbar eight, butt 6 ft"'
        in piped("vary", "sandbar-eight.toml", "--butt", "6 ft").stdout
    )
    for listing in (("propose", *WRITING["propose"][0]), ("new",)):
        refused = piped(*listing)
        assert (refused.returncode, refused.stdout) == (2, b"")
        assert b"name a file" in refused.stderr
    assert not (here / "-").exists()


def test_what_was_written_is_told_in_one_line_whatever_it_is_called(
    tagend: Tagend, demo: Path
) -> None:
    run = tagend("vary", demo / "sandbar-eight.toml", "--butt", "6 ft", "-o", demo / "a\nb.toml")
    assert run.status == 0, run.err
    assert "a\\nb.toml" in run.err.splitlines()[-1]
