"""The columns of a table of recipes, from the fields of a recipe: a row is a section.

What is said of the whole leader stands in its first row.
"""

from collections.abc import Mapping, Sequence
from dataclasses import MISSING
from typing import NamedTuple

from tagend.cards.recipe.fields import FIELDS, Field, usual
from tagend.cards.recipe.recipe import Recipe, Section

NUMBER = "section"
_NUMBER_TOLD = (
    "1 at the butt, then 2, 3, …; may be left empty; 1 begins another leader, as another name does"
)


class Column(NamedTuple):
    """Where a column's cells stand in the tables of a recipe file."""

    heading: str  # of the table, empty for the whole file
    field: Field
    needed: bool  # in each table of that heading


def _columns(cls: type, heading: str = "") -> dict[str, Column]:
    left_out = usual(cls)
    return {
        field.key if field.column == "" else field.column: Column(
            heading, field, needed=left_out[field.name] is MISSING
        )
        for field in FIELDS[cls]
        if field.part is None and field.column is not None
    }


OF_RECIPE: Mapping[str, Column] = _columns(Recipe) | {
    name: column
    for table in FIELDS[Recipe]
    if table.part and table.count is None
    for name, column in _columns(table.part, table.key).items()
}
OF_SECTION: Mapping[str, Column] = _columns(Section)
COLUMNS = (*OF_RECIPE, NUMBER, *OF_SECTION)
NEEDED = tuple(
    name
    for name, column in (*OF_RECIPE.items(), *OF_SECTION.items())
    if column.needed and not column.heading
)


def told(name: str) -> str:
    """Return what a person is told of a column."""
    if name == NUMBER:
        return _NUMBER_TOLD
    field = {**OF_RECIPE, **OF_SECTION}[name].field
    match field.reads:
        case {"type": "bool"}:
            return f"yes {field.told}"
        case {"type": "literal", "expected": words}:
            return f"{field.told}: {_either(words)}"
    return f"{field.told}, such as {_either(field.examples)}"


def _either(words: Sequence[object]) -> str:
    *most, last = map(str, words)
    return f"{', '.join(most)} or {last}" if most else last
