import json
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend


def titles(text: str) -> list[str]:
    return [line for line in text.splitlines() if line and not line.startswith(" ")]


def test_check_audits_one_variant_or_all(tagend: Tagend, demo: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    one = tagend("check", recipe, "--variant", "in hard wind")
    assert (one.status, one.err) == (0, "")
    assert titles(one.out) == [
        "Sandbar eight, in hard wind: 11 ft, 6 sections, tippet 0.010 in fluorocarbon"
    ]
    every = tagend("check", recipe, demo / "reedbed-six.toml", "--variants")
    assert [title.partition(":")[0] for title in titles(every.out)] == [
        "Sandbar eight",
        "Sandbar eight, in hard wind",
        "Sandbar eight, for rough mouths",
        "Reedbed six",
    ]


def test_cuts_lists_a_variant_as_a_leader_of_its_own(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "sandbar-eight.toml", "--variants", "--json")
    plain, wind, guarded = (json.loads(line) for line in run.out.splitlines())
    assert wind["total_finished_mm"] == plain["total_finished_mm"] == 3352.8  # 11 ft
    assert wind["sections"][0]["finished_mm"] == 1828.8  # 6 ft
    assert guarded["sections"][-1]["part"] == "bite guard"


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_a_variant_is_printed_with_its_own_code(
    tagend: Tagend, demo: Path, tmp_path: Path, command: str
) -> None:
    output = tmp_path / "out.pdf"
    run = tagend(
        command, demo / "sandbar-eight.toml", "--variant", "for rough mouths", "-o", output
    )
    assert run.status == 0
    again = tagend("read", output)
    assert again.out.startswith('name = "Sandbar eight, for rough mouths"\n')
    assert "[[variant]]" not in again.out


def test_the_main_card_carries_its_variants_as_a_file(
    tagend: Tagend, demo: Path, tmp_path: Path
) -> None:
    output = tmp_path / "out.pdf"
    tagend("cards", demo / "sandbar-eight.toml", "-o", output)
    assert tagend("read", output).out.count("[[variant]]") == 2


def test_every_recipe_without_the_variant_is_told(tagend: Tagend, demo: Path) -> None:
    files = [demo / name for name in ("sandbar-eight.toml", "reedbed-six.toml")]
    run = tagend("check", *files, "--variant", "at night")
    assert run.status == 2
    assert run.faults == [
        f"{files[0]}: no variant is called 'at night'; "
        "write one of: in hard wind, for rough mouths",
        f"{files[1]}: no variant is called 'at night'; this recipe has none",
    ]


def test_a_variant_that_cannot_be_tied_is_told(tagend: Tagend, demo: Path) -> None:
    recipe = demo / "reedbed-six.toml"
    with recipe.open("a") as file:
        file.write('[[variant]]\nname = "short"\nstop_after = 8\n')
    run = tagend("check", recipe, "--variants")
    assert run.status == 2
    assert run.faults == [
        f"{recipe}: variant 'short', stop_after: the leader has 8 sections; write 1 to 7"
    ]


def test_one_variant_and_all_of_them_are_not_asked_for_together(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "sandbar-eight.toml", "--variants", "--variant", "in hard wind")
    assert run.status == 2
    assert run.faults == [
        "tagend check: Give --variant or --variants, not both. See 'tagend check --help'."
    ]
