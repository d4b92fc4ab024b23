"""Recipes as a table for a spreadsheet: the inverse of reading one."""

from collections.abc import Iterable, Iterator, Mapping

from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.tables.columns import COLUMNS, NUMBER
from tagend.cards.tables.dialect import written_table
from tagend.cards.tables.workbook import workbook


def csv_table(recipes: Iterable[Recipe]) -> bytes:
    """Return the recipes, without their variants, as a CSV file."""
    return written_table(COLUMNS, (row for recipe in recipes for row in _rows(recipe)))


def xlsx_table(recipes: Iterable[Recipe]) -> bytes:
    """Return the recipes, without their variants, as a workbook."""
    rows = ([row.get(name) for name in COLUMNS] for recipe in recipes for row in _rows(recipe))
    return workbook({"leaders": (COLUMNS, *rows)})


def _rows(recipe: Recipe) -> Iterator[dict[str, str]]:
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
