import tomllib
from pathlib import Path
from typing import Any

import pytest

from tagend.cards.base.units import parse_length
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
        (
            ["--restring", "2", "4X nylon", "--restring", "2", "5X nylon"],
            "--restring 2: this section is named twice; say one strand for it",
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
    assert run.faults[0].endswith("this is one of the files that it is made from; name another")
    assert recipe.read_bytes() == before


# ---- from a rack -----------------------------------------------------------------------------


def test_a_leader_is_strung_again_from_the_rack_and_told_how(tagend: Tagend, demo: Path) -> None:
    output = demo / "out.toml"
    run = tagend("vary", demo / "hasty-seven.toml", "--rack", demo / "rack.toml", "-o", output)
    assert run.status == 0
    assert "section 1: 0.020 in hard nylon 18 lb, was 0.021 in nylon 32 lb" in run.faults
    assert any("triple surgeon's, chosen by rule; blood" in line for line in run.faults)
    assert any("warning: section 3 is thicker" in line for line in run.faults)
    assert written(output)["name"] == "Hasty seven, from the rack"
    first = written(output)["section"][0]
    assert (first["diameter"], first["strength"]) == ("0.020 in", "18 lb")
    assert tagend("cuts", output, "--rack", demo / "rack.toml", "--count", 1).status == 0


def test_a_section_without_a_near_spool_is_told_with_what_to_buy(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    reedbed = demo / "reedbed-six.toml"
    run = tagend("vary", reedbed, "--rack", demo / "rack.toml", "-o", output)
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith(f"{reedbed}: --rack section 8: ")
    assert fault.endswith("buy 4X nylon")
    assert not output.exists()


@pytest.mark.parametrize("option", ["--guard", "--tippet", "--restring"])
def test_a_strand_known_by_its_strength_is_found_on_the_rack(
    tagend: Tagend, demo: Path, recipe: Path, output: Path, option: str
) -> None:
    place = [6] if option == "--restring" else []
    asked = (option, *place, "30 lb fluorocarbon 12 in", "-o", output)
    run = tagend("vary", recipe, *asked, "--rack", demo / "rack.toml")
    assert run.status == 0
    assert any("from Clear 34" in line for line in run.faults)
    last = written(output)["section"][-1]
    assert (last["diameter"], last["strength"], last["length"]) == ("0.020 in", "34 lb", "12 in")


def test_without_a_rack_it_says_what_to_read_off_the_spool(
    tagend: Tagend, recipe: Path, output: Path
) -> None:
    run = tagend("vary", recipe, "--guard", "30 lb fluorocarbon 12 in", "-o", output)
    assert run.status == 2
    (fault,) = run.faults
    assert fault.startswith("--guard: ")
    assert "off the spool" in fault
    assert "--rack" in fault
    assert not output.exists()


# ---- what is told ----------------------------------------------------------------------------


def test_what_is_changed_beyond_what_was_asked_is_told(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipe = demo / "breakwater-ten.toml"
    run = tagend("vary", recipe, "--stop-after", 2, "-o", output)
    (line,) = [line for line in run.faults if line.startswith("left out: ")]
    assert "section 3, 0.020 in fluorocarbon 34 lb, tippet" in line
    assert "section 4, 0.028 in fluorocarbon 60 lb, bite guard" in line
    run = tagend("vary", demo / "sandbar-eight.toml", "--butt", "5 ft", "-o", output)
    assert [line for line in run.faults if " long, was " in line] == [
        "section 2: 12 in long, was 24 in",
        "section 3: 12 in long, was 14 in",
    ]


def test_a_total_that_no_longer_holds_is_told(tagend: Tagend, recipe: Path, output: Path) -> None:
    run = tagend("vary", recipe, "--stop-after", 5, "-o", output)
    assert any("11 ft" in line and "left out" in line for line in run.faults)
    assert "total" not in written(output)


def test_a_told_tippet_keeps_its_length_and_the_leader_its_total(
    tagend: Tagend, recipe: Path, output: Path
) -> None:
    tippet = "0.010 in fluorocarbon 8.5 lb 20 in"
    tagend("vary", recipe, "--butt", "6 ft", "--tippet", tippet, "-o", output)
    # 132 - 72 - 20 are 40 for the taper of 24, 14, 10 and 8.
    assert lengths(output) == ["6 ft", "11 in", "11 in", "10 in", "8 in", "20 in"]
    tagend("vary", recipe, "--total", "9 ft", "--tippet", tippet, "-o", output)
    assert lengths(output)[-1] == "20 in"
    assert sum(parse_length(text).mm for text in lengths(output)) == parse_length("9 ft").mm


def test_an_unsound_variant_is_written_and_told(tagend: Tagend, recipe: Path, output: Path) -> None:
    run = tagend("vary", recipe, "--restring", 3, "0.030 in nylon", "-o", output)
    assert run.status == 0
    assert output.exists()
    found = [line.strip() for line in tagend("check", output).out.splitlines()]
    rise = next(line for line in found if line.startswith("warning: section 3 is thicker"))
    assert f"Sandbar eight, section 3 0.030 in: {rise}" in run.faults


def test_a_dropper_that_hangs_at_no_knot_any_more_is_told(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipe = demo / "gravel-five.toml"
    sections = written(recipe)["section"]
    place = next(n for n, section in enumerate(sections, start=1) if "dropper" in section)
    run = tagend("vary", recipe, "--stop-after", place, "-o", output)
    assert any(line.startswith(f"section {place}: no dropper") for line in run.faults)
    run = tagend("vary", recipe, "--stop-after", place, "--tippet", "5X nylon", "-o", output)
    assert not any("no dropper" in line for line in run.faults)


POUNDS = """name = "Old fifty"
[[section]]
length = "4 ft"
material = "hard nylon"
strength = "36 lb"
[[section]]
length = "30 in"
material = "hard nylon"
strength = "25 lb"
[[section]]
length = "2 ft"
diameter = "0.020 in"
material = "hard nylon"
"""


def test_a_formula_known_in_pounds_is_strung_from_the_rack(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    known = output.with_name("pounds.toml")
    known.write_text(POUNDS, "utf-8")
    run = tagend("vary", known, "--rack", demo / "rack.toml", "-o", output)
    assert run.status == 0, run.err
    # The sample rack: 36 lb is on a spool of 0.028 in, 25 lb on one of 0.023 in.
    sections = written(output)["section"]
    assert [each["diameter"] for each in sections] == ["0.028 in", "0.023 in", "0.020 in"]
    assert lengths(output) == ["4 ft", "30 in", "2 ft"]


def test_pounds_that_no_spool_is_near_are_refused_with_what_there_is(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    known = output.with_name("pounds.toml")
    known.write_text(POUNDS.replace("36 lb", "90 lb"), "utf-8")
    run = tagend("vary", known, "--rack", demo / "rack.toml", "-o", output)
    assert (run.status, output.exists()) == (2, False)
    assert "section 1: no spool on the rack is hard nylon of about 90 lb" in run.err
    assert "36 lb hard nylon" in run.err
