"""What a shop that thinks in one unit is told of recipes in any, on the terminal: no other."""

import re
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend

INCHES = re.compile(r"\d (?:in|ft|lb|yd)\b(?! the| all)")
METRIC = re.compile(r"\d (?:mm|cm|m|kg)\b")

WRONG = """
name = "All wrong"
line_weight = 5
total = "12 ft"
line_tip = "0.045 in"
[butt]
end = "perfection loop"
[[section]]
length = "40 in"
diameter = "0.035 in"
material = "nylon"
strength = "8 lb"
[[section]]
length = "20 in"
diameter = "0.010 in"
material = "fluorocarbon"
strength = "30 lb"
knot = "blood"
[[section]]
length = "3 in"
diameter = "0.032 in"
material = "nylon"
strength = "6 lb"
[fly]
knot = "improved clinch"
[reach]
line_out = "20 ft"
rod = "9 ft"
"""


@pytest.fixture
def wrong(demo: Path) -> Path:
    path = demo / "wrong-all.toml"
    path.write_text(WRONG, encoding="utf-8")
    return path


def shop(demo: Path, unit: str) -> Path:
    path = demo / "own.toml"
    path.write_text(f'units = "{unit}"\n', encoding="utf-8")
    return path


def lines(tagend: Tagend, demo: Path, wrong: Path, unit: str) -> list[str]:
    """Return all that is told of the samples and of a leader in which much is wrong."""
    recipes = [*sorted(demo.glob("*-*.toml")), wrong]
    own = ("--shop", shop(demo, unit))
    runs = [
        tagend("check", *recipes, *own),
        tagend("cuts", *recipes, "--explain", *own),
        tagend("cuts", *recipes, "--count", "2", *own),
        tagend("cuts", *recipes, "--rack", demo / "rack.toml", *own),
        tagend("compare", *recipes[:3], *own),
    ]
    return [line for run in runs for line in run.out.splitlines()]


@pytest.mark.parametrize(("unit", "other"), [("cm", INCHES), ("in", METRIC)])
def test_no_other_unit_is_told(
    tagend: Tagend, demo: Path, wrong: Path, unit: str, other: re.Pattern[str]
) -> None:
    told = lines(tagend, demo, wrong, unit)
    assert len(told) > 200
    assert [line for line in told if other.search(line)] == []


def test_a_recipe_without_a_shop_is_told_as_it_is_written(tagend: Tagend, wrong: Path) -> None:
    out = tagend("check", wrong).out
    assert "8 lb" in out
    assert not METRIC.search(out)
