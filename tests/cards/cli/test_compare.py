"""`tagend compare`: leaders side by side, from the files to terminal, page and JSON."""

import json
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import text

IDEAL = "ideal string"


@pytest.fixture
def two(demo: Path) -> tuple[Path, Path]:
    return demo / "sandbar-eight.toml", demo / "reedbed-six.toml"


def test_two_leaders_stand_side_by_side_on_the_terminal(
    tagend: Tagend, two: tuple[Path, Path]
) -> None:
    run = tagend("compare", *two)
    assert run.status == 0
    for words in ("Sandbar eight", "Reedbed six", "worst joint", IDEAL):
        assert words in run.out


def test_the_page_names_both_and_says_what_it_is_good_for(
    tagend: Tagend, two: tuple[Path, Path], tmp_path: Path
) -> None:
    out = tmp_path / "two.pdf"
    assert tagend("compare", *two, "-o", out).status == 0
    page = text(out.read_bytes())
    for words in ("Sandbar eight", "Reedbed six", "wave impedance", "stiffness", IDEAL):
        assert words in page


def test_an_svg_is_the_same_each_time(
    tagend: Tagend, two: tuple[Path, Path], tmp_path: Path
) -> None:
    first, again = tmp_path / "one.SVG", tmp_path / "two.svg"
    for out in (first, again):
        assert tagend("compare", *two, "-o", out).status == 0
    assert first.read_bytes().startswith(b"<?xml")
    assert first.read_bytes() == again.read_bytes()


def test_one_recipe_is_compared_with_its_variants(tagend: Tagend, two: tuple[Path, Path]) -> None:
    run = tagend("compare", two[0])
    assert "in hard wind" in run.out
    assert "for rough mouths" in run.out


def test_json_has_an_object_a_leader_and_ranges_of_two(
    tagend: Tagend, two: tuple[Path, Path]
) -> None:
    first, second = map(json.loads, tagend("compare", *two, "--json").out.splitlines())
    assert (first["name"], second["name"]) == ("Sandbar eight", "Reedbed six")
    assert len(first["joints"]) == len(first["sections"]) - 1
    assert len(first["thirds_g"]) == 3
    assert 0 < first["energy_passed"][0] <= first["energy_passed"][1] <= 1
    assert first["sections"][-1]["from_fly_mm"][1] == 0
    # No modulus of hard nylon is published: `cards/practice/materials.toml`.
    assert first["sections"][0]["stiffnesses_nmm2"] is None


@pytest.mark.parametrize("count", [1, 7])
def test_fewer_than_two_and_more_than_six_are_refused(
    tagend: Tagend, two: tuple[Path, Path], count: int, tmp_path: Path
) -> None:
    out = tmp_path / "out.pdf"
    run = tagend("compare", *[two[1]] * count, "-o", out)
    assert run.status == 2
    assert run.faults
    assert not out.exists()


def test_a_page_of_another_kind_is_refused(tagend: Tagend, two: tuple[Path, Path]) -> None:
    run = tagend("compare", *two, "-o", "out.png")
    assert run.status == 2
    assert ".svg" in run.faults[0]


def test_a_leader_with_an_error_is_not_printed_unless_told_to(
    tagend: Tagend, two: tuple[Path, Path], demo: Path, tmp_path: Path
) -> None:
    names, out = (two[0], demo / "hasty-seven.toml"), tmp_path / "out.svg"
    assert tagend("compare", *names).status == 0
    assert tagend("compare", *names, "-o", out).status == 2
    assert not out.exists()
    assert tagend("compare", *names, "-o", out, "--anyway").status == 0
    assert out.exists()
