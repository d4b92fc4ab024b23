import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.cards.cli.conftest import Tagend


@pytest.fixture
def recipe(demo: Path) -> Path:
    return demo / "sandbar-eight.toml"


@pytest.fixture
def output(tmp_path: Path) -> Path:
    return tmp_path / "out.toml"


LONG = [
    "--tippet",
    "0.0100 in nylon",
    "--total",
    "9 ft",
    "--butt",
    "60.1250 in",
    "--line-weight",
    "9",
]
LONG_NAME = "Sandbar eight, tippet 0.0100 in, 9 ft, butt 60.1250 in, line 9"


def written(output: Path) -> dict[str, Any]:
    return tomllib.loads(output.read_text("utf-8"))


def lengths(output: Path) -> list[str]:
    return [section["length"] for section in written(output)["section"]]


def test_a_variant_is_a_recipe_file_that_is_sound(
    tagend: Tagend, recipe: Path, output: Path
) -> None:
    run = tagend("vary", recipe, "-o", output, "--butt", "6 ft")
    assert run.status == 0
    assert run.faults[-1] == f"wrote {output}: Sandbar eight, butt 6 ft"
    assert lengths(output) == ["6 ft", *["7 1/2 in"] * 4, "30 in"]
    assert "variant" not in written(output)
    assert tagend("check", output).status == 0


@pytest.mark.parametrize(
    ("options", "name"),
    [
        (["--stop-after", "5"], "Sandbar eight, to section 5"),
        (["--total", "9 ft"], "Sandbar eight, 9 ft"),
        (["--tippet", "0.011 in fluorocarbon 10 lb 24 in"], "Sandbar eight, tippet 0.011 in"),
        (["--guard", "0.018 in fluorocarbon 28 lb 12 in"], "Sandbar eight, guard 0.018 in"),
        (["--restring", "2", "0.019 in nylon"], "Sandbar eight, section 2 0.019 in"),
        (["--line-weight", "9"], "Sandbar eight, line 9"),
        (["--use", "Carp"], "Sandbar eight, another use"),
        (["--variant", "in hard wind"], "Sandbar eight, in hard wind"),
        (["--variant", "in hard wind", "--name", "Squall"], "Squall"),
        (["--total", "9 ft", "--name", " Short one "], "Short one"),
        (
            ["--variant", "in hard wind", "--line-weight", "9"],
            "Sandbar eight, in hard wind, line 9",
        ),
    ],
)
def test_each_option_changes_the_leader_and_its_name(
    tagend: Tagend, recipe: Path, output: Path, options: list[str], name: str
) -> None:
    run = tagend("vary", recipe, "-o", output, *options)
    assert run.status == 0
    assert run.faults[-1] == f"wrote {output}: {name}"
    assert written(output)["name"] == name
    before = tomllib.loads(recipe.read_text("utf-8"))
    assert {**written(output), "name": "", "variant": 0} != {**before, "name": "", "variant": 0}
    assert tagend("check", output).status == 0


def test_several_changes_are_made_at_once(tagend: Tagend, recipe: Path, output: Path) -> None:
    tagend(
        *("vary", recipe, "-o", output, "--stop-after", "4", "--total", "8 ft"),
        *("--tippet", "0.012 in fluorocarbon 12 lb", "--use", "Carp"),
    )
    whole = written(output)
    assert (whole["use"], whole["total"], len(whole["section"])) == ("Carp", "8 ft", 5)
    # 46 + 24 + 14 + 10 and the old tippet's 30 are 124; 96/124 of them are 35.6, 18.6, 10.8, 7.7
    # and 23.2. Rounded down they lack 2 in, of which the first two take one each.
    assert lengths(output) == ["36 in", "19 in", "10 1/2 in", "7 1/2 in", "23 in"]


@pytest.mark.parametrize(
    ("options", "fault"),
    [
        (["--stop-after", "6"], "--stop-after: the leader has 6 sections; write 1 to 5"),
        (
            ["--butt", "11 ft"],
            "--butt: a butt of 11 ft leaves nothing of 102 in; "
            "write a shorter butt, or say a shorter tippet",
        ),
        (["--butt", "3 ft"], "--butt: it is 46 in already; write a longer butt"),
        (["--total", "1 in"], "--total: nothing is left for section 2; write a longer total"),
        (["--restring", "7", "4X nylon"], "--restring 7: the leader has 6 sections; write 1 to 6"),
        (
            ["--guard", "0.020 in wire"],
            "--guard: '0.020 in wire' says no length; write one behind it: '0.020 in wire 12 in'",
        ),
        (
            ["--variant", "calm"],
            "no variant is called 'calm'; write one of: in hard wind, for rough mouths",
        ),
        (LONG, f"--name: '{LONG_NAME}' has 62 characters; shorten it to 60"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line_and_nothing_written(
    tagend: Tagend, recipe: Path, output: Path, options: list[str], fault: str
) -> None:
    run = tagend("vary", recipe, "-o", output, *options)
    assert run.status == 2
    assert run.faults == [f"{recipe}: {fault}"]
    assert not output.exists()


@pytest.mark.parametrize(
    ("options", "fault"),
    [
        (
            ["--butt", "72"],
            "--butt: '72' has no unit; "
            'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"',
        ),
        (
            ["--tippet", "4X nilon"],
            "--tippet: no material is called 'nilon'; did you mean nylon?",
        ),
        (["--line-weight", "16"], "--line-weight: 16 is out of range; write a number up to 15"),
        (
            ["--restring", "0", "4X nylon"],
            "--restring 0: '0' is no section; write its number from the butt",
        ),
        ([], "tagend vary: Nothing to change. See 'tagend vary --help'."),
        (["--name", "Same"], "tagend vary: Nothing to change. See 'tagend vary --help'."),
    ],
)
def test_a_wish_that_says_nothing_is_told(
    tagend: Tagend, recipe: Path, output: Path, options: list[str], fault: str
) -> None:
    run = tagend("vary", recipe, "-o", output, *options)
    assert (run.status, run.faults) == (2, [fault])
    assert not output.exists()


def test_a_recipe_is_not_replaced_by_its_variant(tagend: Tagend, recipe: Path) -> None:
    before = recipe.read_bytes()
    run = tagend("vary", recipe, "-o", recipe.parent / "." / recipe.name, "--total", "9 ft")
    assert run.status == 2
    assert run.faults[0].endswith("this is the recipe itself; name another file")
    assert recipe.read_bytes() == before
