"""What `check` warns of is told wherever a leader is used, and an error keeps it from paper."""

from collections.abc import Sequence
from pathlib import Path

import pytest
from msgspec.structs import replace

from tagend.cards.cli.spoken import told_of
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.words.heed_words import heed_lines
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tests.cards.cli.conftest import Outcome, Tagend
from tests.written import PRACTICE, recipe, section

PRINTED = ("cards", "labels", "bench", "counter")


def graver(run: Outcome) -> list[str]:
    """The errors and warnings that `check` tells."""
    lines = (line.strip() for line in run.out.splitlines())
    return [line for line in lines if line.startswith(("error: ", "warning: "))]


@pytest.mark.parametrize("command", PRINTED)
def test_an_error_is_told_and_nothing_printed_unless_anyway(
    tagend: Tagend, demo: Path, command: str
) -> None:
    hasty, output = demo / "hasty-seven.toml", demo / "out.pdf"
    found = [f"Hasty seven: {line}" for line in graver(tagend("check", hasty))]
    run = tagend(command, hasty, "-o", output)
    assert run.status == 2
    assert run.faults[:-1] == found
    assert "--anyway" in run.faults[-1]
    assert not output.exists()

    run = tagend(command, hasty, "--anyway", "-o", output)
    assert run.status == 0
    assert run.faults[: len(found)] == found
    assert output.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("command", PRINTED)
def test_a_warning_is_told_and_the_leader_printed(tagend: Tagend, demo: Path, command: str) -> None:
    hasty, output = demo / "hasty-seven.toml", demo / "out.pdf"
    hasty.write_text(hasty.read_text("utf-8").replace('total = "9 ft"', ""))
    found = graver(tagend("check", hasty))
    run = tagend(command, hasty, demo / "sandbar-eight.toml", "-o", output)
    assert run.status == 0
    assert found
    told = [line for line in run.faults if line.startswith("Hasty seven: ")]
    assert [line for line in told if "no room" not in line] == [
        f"Hasty seven: {line}" for line in found
    ]  # and no notes
    assert output.exists()


def test_cuts_are_listed_with_what_is_wrong_beside_them(tagend: Tagend, demo: Path) -> None:
    hasty = demo / "hasty-seven.toml"
    run = tagend("cuts", hasty)
    assert run.status == 0  # the cuts are right, whatever the recipe is
    assert run.err.splitlines() == [
        f"Hasty seven: {line}" for line in graver(tagend("check", hasty))
    ]
    assert "error" not in run.out


VARIANT = """
[[variant]]
name = "with a rope"
tippet = "0.040 in fluorocarbon 100 lb"
"""


@pytest.fixture
def roped(demo: Path) -> Path:
    """A recipe without a fault and with a variant whose tippet rises."""
    path = demo / "millrace-three.toml"
    with path.open("a", encoding="utf-8") as file:
        file.write(VARIANT)
    return path


@pytest.mark.parametrize("options", [["--variants"], ["--variant", "with a rope"]])
def test_a_variant_that_is_printed_is_held_as_a_recipe_is(
    tagend: Tagend, demo: Path, roped: Path, options: Sequence[str]
) -> None:
    found = graver(tagend("check", roped, *options))
    assert any("thicker" in line for line in found)
    run = tagend("labels", roped, *options, "-o", demo / "out.pdf")
    for line in found:
        assert f"Millrace three, with a rope: {line}" in run.faults


def test_a_card_that_tells_of_its_variants_tells_what_is_wrong_with_them(
    tagend: Tagend, demo: Path, roped: Path
) -> None:
    options = ("--size", "A6", "-o", demo / "out.pdf")
    alone = tagend("cards", roped, *options).faults
    assert any(line.startswith("Millrace three, with a rope: warning: ") for line in alone)
    assert tagend("cards", roped, "--variants", *options).faults[:-1] == alone[:-1]
    assert len(tagend("labels", roped, "-o", demo / "out.pdf").faults) == 1  # has no room for them


def rising(name: str, thick: str) -> Told:
    rise = recipe(*(section("30 in", diameter) for diameter in ("0.011 in", thick, "0.010 in")))
    return told_of(worksheet(replace(rise, name=name), PRACTICE))


def test_leaders_with_one_finding_share_its_line() -> None:
    one = list(heed_lines([rising("One", "0.012 in")], ENGLISH))
    assert one
    assert all(line.startswith("One: ") for line in one)
    names = ("One", "Two", "Three", "Four")
    many = list(heed_lines([rising(name, "0.012 in") for name in names], ENGLISH))
    assert [line.replace("One and 3 more: ", "One: ") for line in many] == one


def test_many_findings_of_one_rule_are_summed_up() -> None:
    leaders = [rising(f"No. {number}", f"0.{number:03} in") for number in range(12, 43)]
    rises = [line for line in heed_lines(leaders, ENGLISH) if "[rise" in line]
    assert len(rises) == 4
    assert rises[-1].startswith("28 more of [rise]")


def test_a_proposed_taper_with_an_error_is_not_written_unless_anyway(
    tagend: Tagend, demo: Path
) -> None:
    shop, output = demo / "strict.toml", demo / "out.toml"
    strict = '[rules.step]\nlimit = 1.05\nseverity = "error"\n'
    shop.write_text(strict, encoding="utf-8")
    asked = (
        *("propose", "--rack", demo / "rack.toml", "--total", "11 ft", "--butt", "0.023 in"),
        *("--tippet", "0.010 in", "--step", "0.004 in", "--shop", shop, "-o", output),
    )
    run = tagend(*asked)
    assert run.status == 2
    assert "--anyway" in run.err
    assert not output.exists()
    assert tagend(*asked, "--anyway").status == 0
    assert output.exists()
