"""A few leaders to write and read: an invented one in full, and the plainest there is."""

from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.code.check_characters import check_characters
from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tagend.cards.recipe.recipe import Butt, Fly, Recipe, Section

KNOTS, MATERIALS = load_knots(), load_materials()


def section(
    length: str,
    diameter: str,
    material: str = "hard nylon",
    strength: str | None = None,
    knot: str | None = None,
) -> Section:
    return Section(
        parse_span(length),
        parse_diameter(diameter),
        material,
        parse_strength(strength) if strength else None,
        knot,
    )


SANDBAR = Recipe(
    "Sandbar eight",
    (
        section("30 in", "0.023 in", "hard nylon", "25 lb", "blood"),
        section("24 in", "0.020 in", "hard nylon", "20 lb", "blood"),
        section("20 in", "0.017 in", "hard nylon", "16 lb", "blood"),
        section("12 in", "0.015 in", "hard nylon", "12 lb", "blood"),
        section("12 in", "0.013 in", "hard nylon", "10 lb", "triple surgeon's"),
        section("24 in", "0.013 in", "fluorocarbon", "14 lb"),
    ),
    line_weight=8,
    butt=Butt("perfection loop", parse_length("3/4 in")),
    fly=Fly("non-slip loop"),
)
SANDBAR_TEXT = (
    "TAG3:SANDBAR EIGHT:W8:BUTT PL*3/4:30*23*HN*25-B:24*20*20:20*17*16:12*15*12:"
    "12*13*10-S3:24*13*FC*14-NS:OD"
)
PLAIN = Recipe("Plain", (section("30 in", "0.023 in"),))


def checked(fields: str) -> str:
    """Return the text of these fields with its mark and its check."""
    text = f"TAG3:{fields}:"
    return text + check_characters(text)


def write(recipe: Recipe, tied: Recipe | None = None) -> str:
    """Return the text of a recipe under the knots and materials of our files."""
    return write_notation(recipe, KNOTS, MATERIALS, tied)


def read(text: str) -> Recipe:
    """Return the recipe in a text under the knots and materials of our files."""
    return read_notation(text, KNOTS, MATERIALS)
