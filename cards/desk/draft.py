"""A leader as it stands in the fields of the page, text by text; its recipe, or its faults, out.

A draft is JSON: `head` has the fields of the leader and `rows` those of each section, under the
names that a spreadsheet's columns have; `variants` have the keys of a recipe file. Whatever came
from the file says as which row of it, counted from 0, under `was`.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.fields import FIELDS, OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe, Variant
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.tables.meaning import Meaning
from tagend.cards.tables.quantity_cells import KIND
from tagend.cards.tables.recipe_tables import recipe_tables
from tagend.cards.tables.written import Spot, Written
from tagend.layouts.base.faults import Fault

Draft = dict[str, Any]
Tables = dict[str, object]

OF_VARIANT: Mapping[str, Field] = {field.key: field for field in FIELDS[Variant]}


def draft_of(tables: Mapping[str, Any]) -> Draft:
    """Return the draft of a recipe file's tables; what they say beyond is left where it is."""
    return {
        "head": {
            name: _text(table[field.key])
            for name, field in OF_RECIPE.items()
            if isinstance(table := tables.get(field.heading, {}) if field.heading else tables, dict)
            and field.key in table
        },
        "rows": [_row(place, row, OF_SECTION) for place, row in _rows(tables, "section")],
        "variants": [_row(place, row, OF_VARIANT) for place, row in _rows(tables, "variant")],
    }


def tables_of(draft: Mapping[str, Any], practice: Practice, unit: str) -> Tables:
    """Return the tables of a recipe file that say what was typed; a bare length is in the unit.

    What cannot be read stays as it was typed, for the reader of recipes to refuse.
    """
    units = {"length": unit, "strength": "kg" if practice.unit in ("cm", "mm") else "lb"}
    written = Written(row="", whole=_spots(draft["head"], units), sections=())
    sections = [_spots(row, units) for row in draft["rows"]]
    tables = recipe_tables(written, sections, practice)
    variants = [_variant(each) for each in draft.get("variants", ())]
    return {**tables, "variant": variants} if variants else tables


def recipe_in(draft: Mapping[str, Any], practice: Practice, unit: str) -> Recipe:
    """Return the recipe that a draft says; raises `Refused` with all that is wrong in it."""
    return recipe_of(tables_of(draft, practice, unit), practice)


def field_of(fault: Fault) -> dict[str, object]:
    """Return the field of the page that a fault is of: of a row or a variant, or of the leader."""
    if found := _IN_ROW.match(fault.where):
        kind, place, rest = found[1], int(found[2]) - 1, found[3]
        return {"of": "rows" if kind == "section" else "variants", "row": place, "field": rest}
    name = next((name for name, field in OF_RECIPE.items() if field.path == fault.where), "")
    return {"of": "head", "field": name}


def without_blank(fault: Fault) -> Fault:
    """Return a fault that does not quote what an empty field says, since that is nothing."""
    return fault._replace(found=fault.instead, instead="") if fault.found in _BLANK else fault


_BLANK = ("'' cannot be read", "this text is empty")

_IN_ROW = re.compile(r"(section|variant) (\d+)(?:, (\w+))?")


def _rows(tables: Mapping[str, Any], key: str) -> Iterator[tuple[int, Mapping[str, Any]]]:
    rows = tables.get(key, ())
    if isinstance(rows, Sequence):
        yield from ((place, row) for place, row in enumerate(rows) if isinstance(row, dict))


def _row(place: int, row: Mapping[str, Any], fields: Mapping[str, Field]) -> dict[str, object]:
    return {"was": place, **{name: _text(row[name]) for name in fields if name in row}}


def _text(value: Any) -> object:
    """Return a value as it is typed; a mark that is set or not stays one."""
    if isinstance(value, dict):
        return {str(key): _text(inner) for key, inner in value.items()}
    return value if isinstance(value, bool) else str(value)


def _spots(fields: Mapping[str, object], units: Mapping[str, str]) -> dict[str, Spot]:
    return {
        name: Spot(_typed(value), name, Meaning(name, unit=_unit(name, str(value), units)))
        for name, value in fields.items()
        if name != "was" and value not in ("", False, None)
    }


def _typed(value: object) -> str:
    return "yes" if value is True else str(value).strip()


def _unit(name: str, text: str, units: Mapping[str, str]) -> str:
    """Return the unit of a bare number; a small one of what is longer than a section is a large."""
    unit = units.get(KIND.get(name, ""), "")
    if name in ("total", "line_out", "rod") and _FEET.fullmatch(text.strip()):
        return "ft" if unit == "in" else "m"
    return unit


# Of inches or centimetres no leader has so few.
_FEET = re.compile(r"1?\d(?:[.,]\d+|[ -]\d/\d|[½¼¾])?|20")


def _variant(typed: Mapping[str, Any]) -> Tables:
    said = {name: value for name, value in typed.items() if name != "was" and value}
    for name in ("line_weight", "stop_after"):
        text = str(said.get(name, ""))
        if text.isdecimal() and len(text) < 3:
            said[name] = int(text)
    return said
