"""The dialogue of `tagend new`: answers in, a recipe file out; nothing typed is lost."""

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from tagend.cards.cli.new import command
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE, recipe, section

BEGIN = ("Alder run", "Dries at dusk", "5", "9 ft")  # name, use, line weight, total
NONE = ("Alder run", "", "", "")
BUTT = "30 in 0.021 in nylon"
ENDS = ("", "", "")  # no more sections, the rule's loop, the rule's knot
RACK = """[[spool]]
label = "Stiff 25"
material = "hard nylon"
diameter = "0.021 in"
strength = "25 lb"
left = "30 yd"
"""


def answered(answers: Sequence[str], *arguments: str) -> Result:
    return CliRunner().invoke(command, arguments, input="".join(f"{a}\n" for a in answers))


def written(path: Path) -> Recipe:
    return read_recipe(path.read_bytes(), PRACTICE)


def test_the_answers_become_a_recipe_file(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *BEGIN,
        "30 in .021 hard nylon 25lb",
        *('20 to 24" 4X fluoro', "slim beauty"),
        *("12 in 6x", ""),
        *("", "perfection loop", "davy", ""),
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    expected = recipe(
        section("30 in", ".021 in", "hard nylon", "25 lb", knot="slim beauty"),
        section('20 to 24"', "4X", "fluorocarbon"),
        section("12 in", "6X", "fluorocarbon"),  # what is not said is as above
        fly="davy",
    )
    found = written(path)
    assert (found.name, found.use, found.line_weight, str(found.total)) == (*BEGIN[:2], 5, "9 ft")
    assert (found.sections, found.fly) == (expected.sections, expected.fly)
    assert found.butt.end is None  # the rule's own knot is left to the rule


@pytest.mark.parametrize(
    ("typed", "length", "diameter", "strength"),
    [
        ("30lb .024 40", "40 in", ".024 in", "30 lb"),
        ("2 ft 19 thou", "2 ft", "19 thou", None),
        ("60 cm 0.45 mm", "60 cm", "0.45 mm", None),
        ("1 1/2 ft 1X 12#", "1 1/2 ft", "1X", "12 lb"),
        ("22 to 26 in .008", "22 to 26 in", ".008 in", None),
    ],
)
def test_a_section_is_typed_as_on_paper(
    tmp_path: Path, typed: str, length: str, diameter: str, strength: str | None
) -> None:
    path = tmp_path / "mine.toml"
    run = answered([*NONE, f"{typed} nylon", *ENDS, ""], "-o", str(path))
    assert run.exit_code == 0, run.output
    assert written(path).sections == (section(length, diameter, "nylon", strength),)


def test_what_a_line_leaves_open_is_asked_for(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [*NONE, ".021 30lb", "3/4", "nilon", "nylon", *ENDS, ""]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    assert "did you mean" in run.stderr or "nylon" in run.stderr
    assert written(path).sections == (section("3/4 in", ".021 in", "nylon", "30 lb"),)


def test_pounds_alone_are_looked_up_on_the_rack_or_said_to_be_no_thickness(tmp_path: Path) -> None:
    path, rack = tmp_path / "mine.toml", tmp_path / "rack.toml"
    rack.write_text(RACK)
    answers = [*NONE, "40 in hard nylon 25lb"]
    run = answered([*answers, "", *ENDS, ""], "-o", str(path), "--rack", str(rack))
    assert run.exit_code == 0, run.output
    assert "Stiff 25" in run.stderr
    (found,) = written(path).sections
    assert str(found.diameter) == "0.021 in"
    run = answered([*answers, "", ".02", *ENDS, ""], "-o", str(tmp_path / "other.toml"))
    assert run.exit_code == 0, run.output
    assert "pounds do not give a thickness" in run.stderr
    assert "this is needed" in run.stderr


def test_the_leader_is_shown_as_it_grows(tmp_path: Path) -> None:
    answers = [*BEGIN, BUTT, "30 in 0.010 in", "", "20 in 0.015 in", "", *ENDS, ""]
    run = answered(answers, "-o", str(tmp_path / "mine.toml"))
    assert run.exit_code == 0, run.output
    grown = run.stderr.partition("Loop at the butt")[0]
    for told in ("30 in of 9 ft so far", "5 ft of 9 ft", "2.10 times", "▄", "section 3 is thicker"):
        assert told in grown, told
    review = run.stderr.partition("Knot to the fly")[2]
    for told in ("CUT", "knot to the next", "the recipe says 9 ft"):
        assert told in review, told


def test_a_step_back_asks_again_and_keeps_what_was_typed(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *("Alder run", "Dries", "<", "Wets at dawn", "", ""),
        *(BUTT, "20 in 0.015 in", "<"),  # back from the knot to section 2,
        *("<", "31 in 0.021 in nylon"),  # and on to the butt
        *("", ""),  # section 2 and its knot as they were
        *ENDS,
        "",
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    found = written(path)
    assert found.use == "Wets at dawn"
    assert [str(each.length) for each in found.sections] == ["31 in", "20 in"]


def test_one_enter_too_many_is_taken_back(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [*NONE, BUTT, "", "<", "20 in 0.015 in", "", *ENDS, ""]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    assert len(written(path).sections) == 2


@pytest.mark.parametrize(
    "last", [(), ("20 in 0.015 in",), ("20 in 0.015 in", ""), ("20 in 8 lb",)], ids=str
)
def test_where_the_answers_end_what_is_whole_is_written(
    tmp_path: Path, last: Sequence[str]
) -> None:
    path = tmp_path / "mine.toml"
    run = answered([*NONE, BUTT, *last], "-o", str(path))
    assert run.exit_code == 0, run.output
    sections = written(path).sections
    assert sections[0] == section("30 in", "0.021 in")
    assert len(sections) == (2 if "0.015" in "".join(last) else 1)


@pytest.mark.parametrize("answers", [[], ["Alder run"], [*NONE, "30 in"]], ids=str)
def test_where_the_answers_end_too_soon_nothing_is_written(
    tmp_path: Path, answers: Sequence[str]
) -> None:
    path = tmp_path / "mine.toml"
    run = answered(answers, "-o", str(path))
    assert isinstance(run.exception, Refused)
    assert not path.exists()


def test_a_slip_is_told_of_and_asked_for_again(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    answers = [
        *(
            "",
            "Alder run",
            "",
            "20",
            "5",
            "900 ft",
            "9 ft",
        ),  # a name is needed; no line has weight 20
        *("forty", BUTT, ""),
        *("blood", "-", ""),  # a joint is no loop at the butt
        "",
    ]
    run = answered(answers, "-o", str(path))
    assert run.exit_code == 0, run.output
    for told in ("this is needed", "from 1 to 15", "196 ft", "forty", "does not serve here"):
        assert told in run.stderr, told
    found = written(path)
    assert (found.name, found.line_weight) == ("Alder run", 5)
    assert found.sections == (section("30 in", "0.021 in"),)


def test_a_file_is_asked_for_and_what_to_type_next_is_quoted(tmp_path: Path) -> None:
    asked = tmp_path / "my alder"
    run = answered([*NONE, BUTT, "", "none", "none", str(asked)])
    assert run.exit_code == 0, run.output
    path = tmp_path / "my alder.toml"
    assert (written(path).butt.end, written(path).fly.knot) == ("none", "none")
    quote = '"' if os.name == "nt" else "'"
    assert f"tagend cards {quote}{path}{quote} -o " in run.stderr


def test_a_file_that_is_there_is_told_before_anything_is_asked(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("kept")
    run = answered([], "-o", str(path))
    assert isinstance(run.exception, Refused)
    assert str(path) in str(run.exception)
    assert path.read_text() == "kept"


def test_a_recipe_that_was_asked_for_is_never_lost(tmp_path: Path) -> None:
    path, other = tmp_path / "mine.toml", tmp_path / "other.toml"
    answers = [*NONE, BUTT, *ENDS]
    assert answered([*answers, str(path)]).exit_code == 0
    before = path.read_bytes()
    run = answered([*answers, str(path), str(tmp_path / "none" / "x.toml"), str(other)])
    assert run.exit_code == 0, run.output
    assert "this file is there already" in run.stderr
    assert "there is no folder" in run.stderr
    assert path.read_bytes() == before
    assert written(other) == written(path)
    again = answered(["Birch run", *answers[1:], ""], "-o", str(path), "--replace")
    assert again.exit_code == 0, again.output
    assert written(path).name == "Birch run"


@pytest.mark.skipif(sys.platform == "win32", reason="has no such terminal")
def test_at_a_real_terminal(tmp_path: Path) -> None:
    import pexpect

    environment = {**os.environ, "LANG": "C.UTF-8", "TERM": "dumb"}
    arguments = ["-m", "tagend.cards", "new"]
    talk: Any = pexpect.spawn(
        sys.executable,
        arguments,
        cwd=str(tmp_path),
        env=environment,
        encoding="utf-8",
        timeout=30,
    )
    for asked, answer in [
        ("Name of the leader: ", "Alder run"),
        ("What it is for.*: ", ""),
        ("Line weight.*: ", "5"),
        ("Total length.*: ", "<"),
        (r"Line weight.*\[5\]: ", "6"),
        ("Total length.*: ", "50 in"),
        ("Section 1.*: ", "30 in .021 nylon"),
        ("Section 2.*: ", "20 .015"),
        (r"knot from 1 to 2 \[blood\]: ", ""),
    ]:
        talk.expect(asked)
        talk.sendline(answer)
    talk.expect("Section 3.*: ")
    talk.sendeof()  # Ctrl-D: that is all
    talk.expect("wrote alder-run.toml; next: tagend cards alder-run.toml -o alder-run.pdf")
    talk.expect(pexpect.EOF)
    talk.close()
    assert talk.exitstatus == 0
    found = written(tmp_path / "alder-run.toml")
    assert (found.line_weight, len(found.sections)) == (6, 2)
