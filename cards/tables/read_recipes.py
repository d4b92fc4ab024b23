"""Tables of leaders: the bytes of a file in; the good recipes, and the faults of the rest out."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from typing import NamedTuple, TypeAlias

from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.cards.tables.columns_file import NOTHING, Answers
from tagend.cards.tables.grid import SheetCells
from tagend.cards.tables.leaders import all_leaders
from tagend.cards.tables.meaning import Meaning
from tagend.cards.tables.open_table import open_table
from tagend.cards.tables.quantity_cells import KIND
from tagend.cards.tables.recipe_tables import recipe_tables, taken_apart
from tagend.cards.tables.sheet import Understood
from tagend.cards.tables.understanding import understand
from tagend.cards.tables.written import Said, Spot, Written
from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused

Tables: TypeAlias = Mapping[str, object]  # of a recipe file
Fill: TypeAlias = Callable[[Tables], Tables]  # what a table leaves open, before it is checked

# What is told of a recipe file, and what of a table instead.
_TOLD_INSTEAD = {
    "write true or false, without quotes": "write yes, or nothing",
    "write a whole number, without quotes": "write a whole number",
    "write the knot to the fly under [fly]": "write the knot to the fly in the column fly_knot",
}
_DAY = re.compile(r"'(\d{4}-\d\d-\d\d)'")
ASK_MATERIAL = 'say which, such as --material "hard nylon", or write it in a column of that name'
ASK_DIAMETER = "read it off the label of the spool, or name your rack with --rack"


class TableRead(NamedTuple):
    """What tables hold."""

    recipes: tuple[Recipe, ...]
    faults: tuple[Fault, ...]  # each with its cell


def read_table(data: bytes, words: Vocabulary, answers: Answers = NOTHING) -> TableRead:
    """Return what is beyond doubt in the sheets of a file, or in its one table.

    Raises `Refused` where no sheet of it holds leaders.
    """
    sheets = understood(open_table(data), answers)
    return read_leaders(all_leaders(sheets).leaders, words, answers)


def understood(grids: Iterable[SheetCells], answers: Answers) -> list[Understood]:
    """Return the sheets that have headings; raises `Refused` where there is none."""
    found = (understand(grid, answers) for grid in grids)
    sheets = [sheet for sheet in found if sheet]
    if not sheets:
        instead = "write headings such as name, butt length, butt diameter above the columns"
        raise refused("no row says what the columns hold", instead)
    return sheets


def without_material(leaders: Iterable[Written], answers: Answers) -> int:
    """Return how many sections name no material."""
    bare = 0
    for said in (said for leader in leaders for said in leader.sections):
        with suppress(Refused):  # which is told of where the leader is read
            bare += "material" not in taken_apart(said, answers.units)
    return bare


def read_leaders(
    leaders: Iterable[Written],
    words: Vocabulary,
    answers: Answers,
    fill: Fill = lambda tables: tables,
) -> TableRead:
    """Return the recipes of the leaders that are written; one with a fault is left out."""
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for leader in leaders:
        with noting(faults):
            recipes.append(_recipe(leader, words, answers, fill))
    bare = [fault for fault in faults if fault.found == _NO_MATERIAL]
    told = [fault for fault in faults if fault.found != _NO_MATERIAL]
    # A cell may speak of several sections, and is told once.
    return TableRead(tuple(recipes), (*dict.fromkeys(told), *_no_material(bare)))


def _recipe(leader: Written, words: Vocabulary, answers: Answers, fill: Fill) -> Recipe:
    faults = list(leader.faults)
    sections: list[Said] = []
    for said in leader.sections:
        with noting(faults):
            sections.append(taken_apart(said, answers.units))
    if not leader.sections:
        faults.append(Fault(leader.row, "this leader has no section", "write one, or leave it out"))
    if len(sections) < len(leader.sections) or not sections:
        raise Refused(*faults)
    if answers.material:
        usual = Spot(answers.material, leader.row, Meaning("material"))
        sections = [{**said, "material": said.get("material", usual)} for said in sections]
    places = _places(leader, sections)
    try:
        recipe = recipe_of(fill(recipe_tables(leader, sections, words)), words)
    except Refused as refusal:
        faults += (_placed(fault, places, sections) for fault in refusal.faults)
    refuse_any(faults)
    return recipe


def _no_material(bare: Sequence[Fault]) -> Iterator[Fault]:
    """Yield what is told once of all sections that name no material."""
    if bare:
        number = f"{len(bare)} sections name" if len(bare) > 1 else "a section names"
        yield Fault(bare[0].where, f"{number} no material", ASK_MATERIAL)


_NO_MATERIAL = "no material"


# The cell and column of what a recipe file's path says, and whether that cell is empty.
Places: TypeAlias = Mapping[str, tuple[str, str, bool]]


def _placed(fault: Fault, places: Places, sections: list[Said]) -> Fault:
    """Return a fault of a recipe file's tables by its cell and column."""
    where, column, empty = places.get(fault.where, ("", fault.where, False))
    if empty and column == "material":
        return Fault(where, _NO_MATERIAL, "")
    if empty and column == "diameter" and (bare := _by_strength(fault, sections)):
        return bare
    found = "this cell is empty" if empty else fault.found
    instead = _TOLD_INSTEAD.get(fault.instead, fault.instead)
    if column in KIND and (day := _DAY.match(found)):
        found = f"the spreadsheet took this for a day, {day[1]}"
        instead = "make its column text, and write it again"
    return Fault(", ".join(filter(None, (where, column))), found, instead)


def _by_strength(fault: Fault, sections: Sequence[Said]) -> Fault | None:
    """Return what is told of a section of which nothing but the strength is known."""
    place = int(fault.where.partition(",")[0].removeprefix("section "))
    strength = sections[place - 1].get("strength")
    if strength is None:
        return None
    found = f"{strength.text[:40]!r} does not say how thick it is"
    return Fault(f"{strength.where}, diameter", found, ASK_DIAMETER)


def _places(leader: Written, sections: Sequence[Said]) -> Places:
    """Return the cell and column of each place that a fault of a recipe file can name."""
    found = {"section": (leader.row, "section", False)}
    for name, field in OF_RECIPE.items():
        spot = leader.whole.get(name)
        found[field.path] = (spot.where if spot else leader.row, name, spot is None)
    for place, said in enumerate(sections, start=1):
        first = next((spot.where for spot in said.values()), leader.row)
        whole = said["strength"].where if "strength" in said else first
        found[f"section {place}"] = (whole, "", False)  # as a rack that has no such spool
        for name, field in OF_SECTION.items():
            where = said[name].where if name in said else leader.empty[place - 1].get(name, first)
            found[f"section {place}, {field.path}"] = (where, name, name not in said)
    return found
