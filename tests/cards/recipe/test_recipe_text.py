from datetime import date

import pytest

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.recipe.recipe import Butt, Fly, Reach, Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tests.written import section


def test_a_short_recipe_has_only_the_keys_it_says() -> None:
    assert recipe_text(Recipe("Level", (section("9 ft", "4X"),))) == (
        'name = "Level"\n\n[[section]]\nlength = "9 ft"\ndiameter = "4X"\nmaterial = "nylon"\n'
    )


def test_a_full_recipe_has_every_key_in_the_order_of_the_samples() -> None:
    upper = section(
        "7½ ft",
        ".023 in",
        "hard nylon",
        "25 lbs",
        knot="blood",
        part="butt",
        dropper="6 in",
        tapers_to="20 thou",
        bought=True,
    )
    recipe = Recipe(
        name='Said "slow" \\ fast',
        sections=(upper, section("22 to 28 in", "4X")),
        lengths="cut",
        use="Crabs",
        line_weight=8,
        line_tip=parse_diameter("0.9 mm"),
        total=parse_length("9' 6\""),
        note="Ä",
        tied=date(2026, 5, 31),
        record_lengths=True,
        butt=Butt("perfection loop", parse_length("¾ in")),
        fly=Fly("none"),
        reach=Reach(parse_length("30 ft"), parse_length("9 ft")),
    )
    assert recipe_text(recipe) == (
        'name = "Said \\"slow\\" \\\\ fast"\n'
        'use = "Crabs"\n'
        "line_weight = 8\n"
        'line_tip = "0.9 mm"\n'
        'total = "9\' 6\\""\n'
        'lengths = "cut"\n'
        'note = "Ä"\n'
        "tied = 2026-05-31\n"
        "record_lengths = true\n"
        '\n[butt]\nend = "perfection loop"\nloop = "¾ in"\n'
        '\n[[section]]\nlength = "7½ ft"\ndiameter = ".023 in"\ntapers_to = "20 thou"\n'
        'material = "hard nylon"\nstrength = "25 lbs"\npart = "butt"\nknot = "blood"\n'
        'dropper = "6 in"\nbought = true\n'
        '\n[[section]]\nlength = "22 to 28 in"\ndiameter = "4X"\nmaterial = "nylon"\n'
        '\n[fly]\nknot = "none"\n'
        '\n[reach]\nline_out = "30 ft"\nrod = "9 ft"\n'
    )


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Sandbar eight", "sandbar-eight.toml"),
        ("Nine: 5X (fine)!", "nine-5x-fine.toml"),
        ("../../etc/passwd", "etc-passwd.toml"),
        ("Коса", "коса.toml"),
        ("№ 8", "8.toml"),
        ("...", "recipe.toml"),
        ("C:\\con", "c-con.toml"),
        ("CON", "con-recipe.toml"),  # what Windows takes for a device, whatever ends its name
        ("Lpt 1", "lpt-1.toml"),
        ("LPT1. ", "lpt1-recipe.toml"),
    ],
)
def test_a_file_is_named_for_its_leader_and_stays_in_its_folder(name: str, file: str) -> None:
    assert file_name(name) == file
