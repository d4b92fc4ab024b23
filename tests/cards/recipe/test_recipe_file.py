import tomllib
from datetime import date
from importlib.resources.abc import Traversable

import pytest
from hypothesis import given, settings
from jsonschema import Draft202012Validator
from msgspec.structs import fields

from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.practice.shop_file import common_practice
from tagend.cards.recipe.recipe import Butt, Fly, Reach, Recipe, Section
from tagend.cards.recipe.recipe_file import json_schema, read_recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.layouts.base.faults import Refused
from tests.strategies import recipes_with_variants
from tests.tree import BROKEN, SAMPLES

WRITTEN = [file for file in sorted(SAMPLES.iterdir()) if file.name.endswith(".toml")]
RECIPES = [
    file
    for file in WRITTEN
    if file.name not in ("rack.toml", "shop.toml", "hands.toml", "taller.toml")
]

PRACTICE = common_practice()
SCHEMA = Draft202012Validator(json_schema())
KEYS: list[str] = list(SCHEMA.schema["properties"])

LEVEL = """
[[section]]
length = "9 ft"
diameter = "4X"
material = "nylon"
"""

SYNTAX = 'write keys as name = "text", and headings as [butt] or [[section]]'
LENGTH = 'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
DIAMETER = 'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
STRAND = 'write diameter and material, such as "0.028 in fluorocarbon 60 lb 12 in"'
NO_X = (
    "is not a size from 0X to 8X, and above 0X the trade writes two ways; "
    'write the diameter itself, such as "0.013 in"'
)
EMPTY = "this file is empty; start from one that `tagend samples` writes"
NO_TEXT_FILE = "this is not a text file in UTF-8; save it as UTF-8"
NO_TABLE = "this is not a table; write its keys under a heading in brackets"


def knots_for(*places: str) -> str:
    """Return the names of the knots that serve at these places, in the order of their file."""
    return ", ".join(knot.name for knot in PRACTICE.knots if set(knot.places) & set(places))


MESSAGES = {
    "absurd-length": [
        "section 1, length: '1760 yd' is no likely length; write a length from 0.0011 to 65.6 yd"
    ],
    "bare-number": [
        f"section 1, length: 108 has no unit; {LENGTH}",
        f"section 1, diameter: 0.007 has no unit; {DIAMETER}",
        "section 1, strength: '4' has no unit; "
        'write a strength with its unit, such as "25 lb" or "11.3 kg"',
    ],
    "blank": [EMPTY],
    "butt-as-a-text": [f"butt: {NO_TABLE}"],
    "cut-off": [
        "line 3: a heading that is not closed; write [butt] or [[section]]",
    ],
    "decimal-comma": [
        "section 1, length: '2,7 m' has a comma; write the decimal mark as a point",
    ],
    "dropper-below-the-last-section": [
        "section 1, dropper: the last section has no joint to leave a dropper at; "
        "write the dropper on the section above",
    ],
    "emoji-name": ["name: U+1F41F (fish) cannot be printed; leave it out"],
    "empty": [EMPTY],
    "empty-name": ["name: this text is empty; write 1 to 60 characters"],
    "key-in-the-wrong-table": ["butt: no key is called 'knot'; write one of: end, loop"],
    "key-twice": ["line 2, column 22: this key is there already; keep one of the two"],
    "knot-below-the-last-section": [
        "section 1, knot: the last section ends at the fly, and 'blood' joins it to nothing; "
        "write the knot to the fly under [fly]",
    ],
    "knot-of-another-place": [
        "butt, end: 'clinch' is for the ring or fly and does not serve here; "
        f"write one of: {knots_for('butt', 'line')}",
        "section 1, knot: 'perfection loop' is for the butt and does not serve here; "
        f"write one of: {knots_for('joint')}",
        "fly, knot: 'blood' is for the joint and does not serve here; "
        f"write one of: {knots_for('fly')}",
    ],
    "line-break-in-name": [
        "name: U+000A (a control character) cannot be printed; leave it out",
    ],
    "line-weight-of-nought": ["line_weight: 0 is out of range; write a number from 1"],
    "line-weight-out-of-range": ["line_weight: 16 is out of range; write a number up to 15"],
    "long-line": ["line 2: this line has 5014 characters; write at most 3000 in a line"],
    "loop-on-a-bare-end": ["butt, loop: a bare end has no loop; leave the loop or the end out"],
    "missing-diameter": ["section 1, diameter: this key is missing; write diameter = …"],
    "missing-name": ["name: this key is missing; write name = …"],
    "missing-sections": ["section: this key is missing; write a heading [[section]]"],
    "misspelt-heading": [
        "section: this key is missing; write a heading [[section]]",
        "no key is called 'sections'; did you mean section?",
    ],
    "misspelt-key": [
        "section 1, length: this key is missing; write length = …",
        "section 1: no key is called 'lenght'; did you mean length?",
    ],
    "name-of-300-characters": ["name: this text has 300 characters; write at most 60"],
    "negative-length": [f"section 1, length: '-9 ft' is negative; {LENGTH}"],
    "nested-too-deep": ["this file is nested too deep; write tables and texts only"],
    "not-a-text-file": [NO_TEXT_FILE],
    "range-that-shrinks": [
        "section 1, length: '28 to 22 in' does not grow; write the shorter length first",
    ],
    "reach-without-a-rod": ["reach, rod: this key is missing; write rod = …"],
    "section-as-a-table": [
        "section: this is not a list of tables; write each under a heading in double brackets",
    ],
    "section-as-a-text": [f"section 1: {NO_TABLE}"],
    "several-contradictions": [
        "section 1, knot: the last section ends at the fly, and 'blood' joins it to nothing; "
        "write the knot to the fly under [fly]",
        "section 1, dropper: the last section has no joint to leave a dropper at; "
        "write the dropper on the section above",
        "butt, loop: a bare end has no loop; leave the loop or the end out",
    ],
    "several-faults": [
        "name: this text is empty; write 1 to 60 characters",
        f"section 1, diameter: '0.023' has no unit; {DIAMETER}",
        "section 1, material: no material is called 'hard nilon'; "
        "did you mean hard nylon or sighter nylon?",
        "section 2, length: this key is missing; write length = …",
        f"section 2, diameter: '9X' {NO_X}",
        "section 2, knot: no knot is called 'blod'; did you mean blood?",
        "section 2: no key is called 'lenght'; did you mean length?",
        "no key is called 'line_wieght'; did you mean line_weight or line_tip?",
    ],
    "several-faults-in-variants": [
        "variant 1, replace, x: 'x' is no section; write its number from the butt",
        "variant 1, replace, 1: no material is called 'nilon'; did you mean nylon?",
        "variant 1, stop_after: 0 is out of range; write a number from 1",
        f"variant 1, tippet: '0.010' has no unit; {DIAMETER}",
        f"variant 1, guard: '0.028 in 60 lb 12 in' names no material; {STRAND}",
        f"variant 2, tippet: this is not a text in quotes; {STRAND}",
        f"variant 2, guard: this text is empty; {STRAND}",
        f"variant 2, butt: 72 has no unit; {LENGTH}",
        "variant 2: no key is called 'but'; did you mean butt?",
    ],
    "sixty-sections": ["section: there are 60; write at most 30"],
    "syntax-error": [
        f"line 4, column 8: expected '=' after a key in a key/value pair; {SYNTAX}",
    ],
    "thicker-than-0x": [f"section 1, diameter: '03X' {NO_X}"],
    "two-variants-of-one-name": [
        "variant 2, name: another variant is called 'short'; give each a name of its own",
    ],
    "unknown-key": [
        f"no key is called 'colour'; write one of: {', '.join(KEYS)}",
    ],
    "unknown-knot": [
        "section 1, knot: no knot is called 'bloody'; did you mean blood or clinch?",
    ],
    "unknown-material": [
        "section 1, material: no material is called 'horsehair'; "
        f"write one of: {', '.join(material.name for material in PRACTICE.materials)}",
    ],
    "unknown-part": [
        "section 1, part: 'middle' is not known; "
        "write one of: 'butt', 'taper', 'tippet', 'bite guard' or 'sighter'",
    ],
    "variant-that-changes-nothing": [
        "variant 1: it changes nothing; write what it changes, such as butt = …",
    ],
    "windows-text-in-utf-16": [NO_TEXT_FILE],
    "wrong-types": [
        'name: this is not a text in quotes; write a text such as "Sandbar eight"',
        "line_weight: '8' is not a whole number; write a whole number, without quotes",
        "lengths: 'knotted' is not known; write one of: 'finished' or 'cut'",
        "tied: 'last May' is not a date; write it as 2026-05-31 or 31 May 2026",
        "record_lengths: 'yes' is not true or false; write true or false, without quotes",
        'butt, end: this is not a text in quotes; write a knot, such as "blood"',
        f"section 1, length: this is not a text in quotes; {LENGTH}",
        f"section 1, diameter: this is not a text in quotes; {DIAMETER}",
        'section 1, material: this is not a text in quotes; write a material, such as "nylon"',
        "section 1, bought: 1 is not true or false; write true or false, without quotes",
    ],
}

# What the schema cannot see: the meaning of a text, and keys against one another.
SEEN_BY_READING_ONLY = {
    "absurd-length",
    "decimal-comma",
    "dropper-below-the-last-section",
    "emoji-name",
    "empty-name",
    "knot-below-the-last-section",
    "knot-of-another-place",
    "line-break-in-name",
    "loop-on-a-bare-end",
    "name-of-300-characters",
    "negative-length",
    "range-that-shrinks",
    "several-contradictions",
    "thicker-than-0x",
    "two-variants-of-one-name",
    "unknown-knot",
    "unknown-material",
    "variant-that-changes-nothing",
}


def read(text: str) -> Recipe:
    return read_recipe(text.encode(), PRACTICE)


def test_each_broken_file_has_its_message() -> None:
    assert {file.stem for file in BROKEN.iterdir()} == MESSAGES.keys()


@pytest.mark.parametrize("fault", MESSAGES)
def test_a_broken_file_is_refused_with_all_that_is_wrong(fault: str) -> None:
    with pytest.raises(Refused) as refusal:
        read_recipe((BROKEN / f"{fault}.toml").read_bytes(), PRACTICE)
    assert str(refusal.value).splitlines() == MESSAGES[fault]


def test_every_key_is_read() -> None:
    recipe = read(
        """
        name = "  Sandbar eight "
        use = "Crabs"
        line_weight = 8
        line_tip = "0.036 in"
        total = "9 ft"
        lengths = "cut"
        note = "For a stiff crosswind."
        tied = 2026-05-31
        record_lengths = true
        butt = { end = "Perfection Loop", loop = "3/4 in" }
        fly = { knot = "NONE" }
        reach = { line_out = "30 ft", rod = "9 ft" }

        [[section]]
        length = "22 to 28 in"
        diameter = "23 thou"
        tapers_to = "0.020 in"
        material = "Hard-Nylon"
        strength = "25 lb"
        part = "butt"
        knot = "Blood knot"
        dropper = "6 in"
        bought = true

        [[section]]
        length = "50 cm"
        diameter = "4X"
        material = "fluoro"
        """
    )
    upper = Section(
        length=parse_span("22 to 28 in"),
        diameter=parse_diameter("23 thou"),
        material="hard nylon",
        strength=parse_strength("25 lb"),
        knot="blood",
        part="butt",
        dropper=parse_length("6 in"),
        tapers_to=parse_diameter("0.020 in"),
        bought=True,
    )
    lower = Section(parse_span("50 cm"), parse_diameter("4X"), "fluorocarbon")
    assert recipe == Recipe(
        name="Sandbar eight",
        sections=(upper, lower),
        lengths="cut",
        use="Crabs",
        line_weight=8,
        line_tip=parse_diameter("0.036 in"),
        total=parse_length("9 ft"),
        note="For a stiff crosswind.",
        tied=date(2026, 5, 31),
        record_lengths=True,
        butt=Butt("perfection loop", parse_length("3/4 in")),
        fly=Fly("none"),
        reach=Reach(parse_length("30 ft"), parse_length("9 ft")),
    )


@pytest.mark.parametrize(
    "name", ["Песчаная коса", "浅瀬八番", "Ärlan № 8, 20 °C", "e\u0301te\u0301"]
)
def test_a_name_may_be_in_any_script(name: str) -> None:
    recipe = read(f'name = "{name}"{LEVEL}')
    assert recipe.name == name.replace("e\u0301", "é")


def test_a_byte_order_mark_and_windows_line_ends_are_read() -> None:
    text = f'name = "Level"\n{LEVEL}'.replace("\n", "\r\n")
    assert read_recipe(b"\xef\xbb\xbf" + text.encode(), PRACTICE).name == "Level"


@pytest.mark.parametrize("written", ["2026-05-31", '"2026-05-31"'])
def test_a_date_may_stand_with_or_without_quotes(written: str) -> None:
    assert read(f'name = "Level"\ntied = {written}\n{LEVEL}').tied == date(2026, 5, 31)


def test_sections_of_thirty_are_enough_for_any_taper() -> None:
    assert len(read('name = "All knots"\n' + 30 * LEVEL).sections) == 30


def test_a_file_of_more_than_a_megabyte_is_refused() -> None:
    with pytest.raises(Refused, match=r"^this file is too large; give a TOML file of at most 1 MB"):
        read_recipe(b"#\n" * 500_001, PRACTICE)


@pytest.mark.parametrize("sample", RECIPES, ids=lambda file: file.name)
def test_every_sample_comes_back_from_its_text(sample: Traversable) -> None:
    recipe = read_recipe(sample.read_bytes(), PRACTICE)
    assert read(recipe_text(recipe)) == recipe


@given(recipes_with_variants)
@settings(max_examples=50)
def test_a_recipe_comes_back_from_its_text(recipe: Recipe) -> None:
    text = recipe_text(recipe)
    again = read(text)
    assert again == recipe
    assert recipe_text(again) == text  # quantities come out as they were written


# ---- the JSON Schema -------------------------------------------------------------------------


def test_the_schema_is_a_valid_schema() -> None:
    Draft202012Validator.check_schema(json_schema())


@pytest.mark.parametrize("sample", RECIPES, ids=lambda file: file.name)
def test_the_schema_accepts_every_sample(sample: Traversable) -> None:
    assert list(SCHEMA.iter_errors(tomllib.loads(sample.read_text()))) == []


def test_the_schema_knows_every_key_of_a_recipe() -> None:
    called = {"sections": "section", "variants": "variant", "class_": "class"}
    assert set(KEYS) == {called.get(field.name, field.name) for field in fields(Recipe)}


@pytest.mark.parametrize("fault", MESSAGES)
def test_the_schema_rejects_what_it_can_see(fault: str) -> None:
    try:
        tables = tomllib.loads((BROKEN / f"{fault}.toml").read_text("utf-8"))
    except ValueError:
        return
    assert SCHEMA.is_valid(tables) == (fault in SEEN_BY_READING_ONLY)
