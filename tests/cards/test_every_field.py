"""Each field of a recipe, as the table of fields has it, survives every way out and back in.

The cases come from the table and its examples, so that a new field is tried as soon as it is there.
"""

import json
from collections.abc import Callable, Iterator
from typing import NamedTuple

import pytest
from msgspec import NODEFAULT
from msgspec.structs import replace

from tagend.cards.base.file_schema import examples_of, usual
from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.cards.printing.recover import recipes_in
from tagend.cards.recipe.fields import FIELDS, OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe, Variant
from tagend.cards.recipe.recipe_file import read_recipe, recipe_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.tables.read_recipes import read_table
from tagend.cards.tables.write_recipes import csv_table
from tagend.cards.words.worksheet_json import json_line
from tests.told import JOB
from tests.written import PRACTICE

Raw = dict[str, object]  # tables of a recipe file


class Case(NamedTuple):
    """A recipe with the least that it must say, and one field set."""

    field: Field
    tables: Raw
    whole: Field  # of the recipe itself: the field, or the part that it is of


def examples(cls: type, field: Field) -> list[object]:
    """Return what a field may say, other than when it is left out."""
    assert field.reads is not None
    return [each for each in examples_of(field.reads) if each != usual(cls)[field.name]]


def least(cls: type) -> Raw:
    """Return the keys that have to be written."""
    needed = [each for each in FIELDS[cls] if usual(cls)[each.name] is NODEFAULT]
    return {field.key: said(cls, field, least) for field in needed}


def full(cls: type) -> Raw:
    """Return every key there is."""
    return {field.key: said(cls, field, full) for field in FIELDS[cls]}


def said(cls: type, field: Field, row: Callable[[type], Raw]) -> object:
    return held(field, row(field.part)) if field.part else examples(cls, field)[0]


def held(field: Field, row: Raw) -> object:
    """Return a part's table as it stands in a recipe file; no joint follows the last section."""
    assert field.part is not None
    if field.count is None:
        return row
    return [row, *[least(field.part)] * field.count[0]]


def cases() -> Iterator[Case]:
    for whole in FIELDS[Recipe]:
        if whole.part is None:
            for example in examples(Recipe, whole):
                yield Case(whole, {**least(Recipe), whole.key: example}, whole)
            continue
        needed = least(whole.part) | ({"stop_after": 1} if whole.part is Variant else {})
        for field in FIELDS[whole.part]:
            for example in examples(whole.part, field):
                row = {**needed, field.key: example}
                yield Case(field, {**least(Recipe), whole.key: held(whole, row)}, whole)


CASES = [*cases(), Case(FIELDS[Recipe][0], full(Recipe), FIELDS[Recipe][0])]
BARE = recipe_of(least(Recipe), PRACTICE)

every_field = pytest.mark.parametrize(
    "case", CASES, ids=lambda case: f"{case.whole.key} {case.field.key}"
)


def carried(recipe: Recipe) -> Recipe:
    """Return what a recipe keeps in a spreadsheet and in a code: each variant is its own there."""
    return replace(recipe, variants=())


@pytest.mark.parametrize("cls", FIELDS)
def test_the_table_has_each_field_once(cls: type) -> None:
    table = FIELDS[cls]
    assert sorted(field.name for field in table) == sorted(usual(cls))
    assert all(field.part in FIELDS if field.part else field.reads for field in table)


@every_field
def test_it_comes_back_from_a_recipe_file(case: Case) -> None:
    recipe = recipe_of(case.tables, PRACTICE)
    text = recipe_text(recipe)
    again = read_recipe(text.encode(), PRACTICE)
    assert (again, recipe_text(again)) == (recipe, text)
    assert (recipe == BARE) == (case.tables == least(Recipe))


@every_field
def test_it_comes_back_from_a_spreadsheet(case: Case) -> None:
    recipe = recipe_of(case.tables, PRACTICE)
    (again,), faults = read_table(csv_table([recipe]), PRACTICE)
    assert (again, faults) == (carried(recipe), ())
    assert recipe_text(again) == recipe_text(carried(recipe))


@every_field
def test_it_comes_back_from_a_code(case: Case) -> None:
    recipe = recipe_of(case.tables, PRACTICE)
    text = write_notation(recipe, PRACTICE.knots, PRACTICE.materials)
    assert read_notation(text, PRACTICE.knots, PRACTICE.materials) == carried(recipe)


@pytest.mark.parametrize("name", [*OF_RECIPE, *OF_SECTION])
def test_a_script_finds_it(name: str) -> None:
    whole = json.loads(json_line(worksheet(BARE, PRACTICE)))
    home = whole if name in OF_RECIPE else whole["sections"][0]
    keys = {key.removesuffix("_mm").removesuffix("_kg") for key in home}
    # A length may be a range, so it is told as worked out.
    assert {"finished", "cut"} <= keys if name == "length" else name in keys


def test_all_of_them_come_back_from_a_pdf() -> None:
    recipe = recipe_of(full(Recipe), PRACTICE)
    pdf = labels_pdf(JOB, [worksheet(recipe, PRACTICE)], LabelWishes())
    assert recipes_in(pdf, PRACTICE).recipes == (recipe,)
