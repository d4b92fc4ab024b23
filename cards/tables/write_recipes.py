"""Recipes as a table for a spreadsheet: the inverse of reading one."""

from collections.abc import Iterable, Iterator, Mapping

from tagend.cards.recipe.recipe import Recipe
from tagend.cards.tables.columns import COLUMNS, NUMBER, OF_RECIPE, OF_SECTION, Column
from tagend.cards.tables.dialect import written_table


def csv_table(recipes: Iterable[Recipe]) -> bytes:
    """Return the recipes, without their variants, as a CSV file."""
    return written_table(COLUMNS, (row for recipe in recipes for row in _rows(recipe)))


def _rows(recipe: Recipe) -> Iterator[dict[str, str]]:
    whole = _cells(recipe, OF_RECIPE)
    for place, section in enumerate(recipe.sections, start=1):
        yield {**whole, NUMBER: str(place), **_cells(section, OF_SECTION)}
        whole = {"name": recipe.name}


def _cells(whole: object, columns: Mapping[str, Column]) -> dict[str, str]:
    cells = {}
    for name, (heading, field, _) in columns.items():
        home = getattr(whole, heading) if heading else whole
        cells[name] = _cell(None if home is None else getattr(home, field.name))
    return cells


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else ""
    return "" if value is None else str(value)
