"""Recipes as a table for a spreadsheet: the inverse of reading one."""

from collections.abc import Iterable, Iterator, Mapping

from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.tables.columns import COLUMNS, NUMBER
from tagend.cards.tables.dialect import written_table
from tagend.cards.tables.grid import MOST_ROWS
from tagend.cards.tables.workbook import workbook
from tagend.layouts.base.faults import refused


def csv_table(recipes: Iterable[Recipe]) -> bytes:
    """Return the recipes, without their variants, as a CSV file; raises `Refused` as below."""
    return written_table(COLUMNS, _rows(recipes))


def xlsx_table(recipes: Iterable[Recipe]) -> bytes:
    """Return them as a workbook; raises `Refused` for more rows than are read back."""
    rows = ([row.get(name) for name in COLUMNS] for row in _rows(recipes))
    return workbook({"leaders": (COLUMNS, *rows)})


def _rows(recipes: Iterable[Recipe]) -> list[dict[str, str]]:
    rows = [row for recipe in recipes for row in _rows_of(recipe)]
    if len(rows) >= MOST_ROWS:  # with the headings
        found = f"these leaders take {len(rows):,} rows, more than are read back"
        raise refused(found, f"write tables of fewer leaders, of less than {MOST_ROWS:,} rows each")
    return rows


def _rows_of(recipe: Recipe) -> Iterator[dict[str, str]]:
    whole = _cells(recipe, OF_RECIPE)
    for place, section in enumerate(recipe.sections, start=1):
        yield {**whole, NUMBER: str(place), **_cells(section, OF_SECTION)}
        whole = {"name": recipe.name}


def _cells(whole: object, columns: Mapping[str, Field]) -> dict[str, str]:
    return {name: _cell(field.value(whole)) for name, field in columns.items()}


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else ""
    return "" if value is None else str(value)
