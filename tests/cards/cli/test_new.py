"""The dialogue of `tagend new`: answers in, a recipe file out; a slip is asked for again."""

from collections.abc import Sequence
from pathlib import Path

from click.testing import CliRunner, Result

from tagend.cards.cli.new import command
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE, recipe, section

SECTIONS = ("30 in", "0.021 in", "nylon", "")


def answered(answers: Sequence[str], *arguments: str) -> Result:
    return CliRunner().invoke(command, arguments, input="".join(f"{a}\n" for a in answers))


def written(path: Path) -> Recipe:
    return read_recipe(path.read_bytes(), PRACTICE)


def test_the_answers_become_a_recipe_file(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *("Alder run", "Dries at dusk", "perfection loop"),
        *("30 in", "0.021 in", "hard nylon", "25 lb"),
        *("20 to 24 in", "4X", "fluorocarbon", ""),
        *("", "improved clinch"),
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    expected = recipe(
        section("30 in", "0.021 in", "hard nylon", "25 lb"),
        section("20 to 24 in", "4X", "fluorocarbon"),
        butt="perfection loop",
        fly="improved clinch",
    )
    found = written(path)
    assert (found.name, found.use) == ("Alder run", "Dries at dusk")
    assert (found.sections, found.butt, found.fly) == (
        expected.sections,
        expected.butt,
        expected.fly,
    )


def test_a_slip_is_told_of_and_asked_for_again(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *("", "Alder run", ""),  # a name is needed
        *("blood", ""),  # a joint is no loop at the butt
        *("30", "30 in", "0.021", "0.021 in", "nilon", "nylon", ""),  # no units; a misspelling
        *("", ""),
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    for told in ("this is needed", "does not serve here", "has no unit", "did you mean nylon?"):
        assert told in run.stderr, told
    found = written(path)
    assert found.name == "Alder run"
    assert found.sections == (section("30 in", "0.021 in"),)
    assert (found.butt.end, found.fly.knot) == (None, None)


def test_what_is_wrong_is_told_and_the_recipe_saved_all_the_same(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *("Alder run", "", ""),
        *("30 in", "0.021 in", "nylon", ""),
        *("30 in", "0.010 in", "nylon", ""),
        *("20 in", "0.015 in", "nylon", ""),
        *("20 in", "0.008 in", "nylon", ""),
        *("", ""),
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    (rise,) = [line for line in run.stderr.splitlines() if "section 3 is thicker" in line]
    assert rise.startswith("Alder run: warning: ")
    assert len(written(path).sections) == 4


def test_a_file_is_asked_for_where_none_is_named(tmp_path: Path) -> None:
    path = tmp_path / "asked.toml"
    run = answered(["Alder run", "", "none", *SECTIONS, "", "none", str(path)])
    assert run.exit_code == 0, run.output
    assert (written(path).butt.end, written(path).fly.knot) == ("none", "none")


def test_a_file_that_is_there_is_told_before_anything_is_asked(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("kept")
    run = answered([], "-o", str(path))
    assert isinstance(run.exception, Refused)
    assert str(path) in str(run.exception)
    assert path.read_text() == "kept"


def test_a_recipe_that_was_asked_for_is_never_lost(tmp_path: Path) -> None:
    path, other = tmp_path / "mine.toml", tmp_path / "other.toml"
    answers = ["Alder run", "", "", *SECTIONS, "", ""]
    assert answered([*answers, str(path)]).exit_code == 0
    before = path.read_bytes()
    run = answered([*answers, str(path), str(tmp_path / "none" / "x.toml"), str(other)])
    assert run.exit_code == 0, run.output
    assert "this file is there already" in run.stderr
    assert "there is no folder" in run.stderr
    assert path.read_bytes() == before
    assert written(other) == written(path)
    assert answered(["Birch run", *answers[1:]], "-o", str(path), "--replace").exit_code == 0
    assert written(path).name == "Birch run"
