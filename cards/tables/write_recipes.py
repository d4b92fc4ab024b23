"""Recipes as a table for a spreadsheet: the inverse of reading one."""

import csv
from collections.abc import Iterable
from io import StringIO

from tagend.cards.recipe.recipe import Recipe, Section
from tagend.cards.tables.columns import COLUMNS, NUMBER, harmless


def csv_table(recipes: Iterable[Recipe]) -> bytes:
    """Return the recipes, without their variants, as CSV: RFC 4180, in UTF-8 with a mark.

    Without the byte order mark a common spreadsheet takes UTF-8 for an older encoding.
    """
    text = StringIO()
    writer = csv.DictWriter(text, COLUMNS, restval="", lineterminator="\r\n")
    writer.writeheader()
    for recipe in recipes:
        whole = _of_recipe(recipe)
        for place, section in enumerate(recipe.sections, start=1):
            cells = whole if place == 1 else {"name": recipe.name}
            row = {**cells, NUMBER: place, **_of_section(section)}
            writer.writerow({column: harmless(_cell(value)) for column, value in row.items()})
    return text.getvalue().encode("utf-8-sig")


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else ""
    return "" if value is None else str(value)


def _of_recipe(recipe: Recipe) -> dict[str, object]:
    return {
        "name": recipe.name,
        "use": recipe.use,
        "line_weight": recipe.line_weight,
        "line_tip": recipe.line_tip,
        "total": recipe.total,
        "lengths": recipe.lengths,
        "note": recipe.note,
        "tied": recipe.tied,
        "record_lengths": recipe.record_lengths,
        "butt_end": recipe.butt.end,
        "butt_loop": recipe.butt.loop,
        "fly_knot": recipe.fly.knot,
        "line_out": recipe.reach and recipe.reach.line_out,
        "rod": recipe.reach and recipe.reach.rod,
    }


def _of_section(section: Section) -> dict[str, object]:
    return {
        "length": section.length,
        "diameter": section.diameter,
        "tapers_to": section.tapers_to,
        "material": section.material,
        "strength": section.strength,
        "part": section.part,
        "knot": section.knot,
        "dropper": section.dropper,
        "bought": section.bought,
    }
