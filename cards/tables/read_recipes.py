"""A table of recipes: the bytes of a CSV file in; the good recipes, and the faults of the rest."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.cards.tables.columns import COLUMNS, NUMBER
from tagend.cards.tables.rows import TableRow, csv_rows
from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any

# What is told of a recipe file, and what of a table instead.
_TOLD_INSTEAD = {
    "write true or false, without quotes": "write yes, or nothing",
    "write a whole number, without quotes": "write a whole number",
    "write the knot to the fly under [fly]": "write the knot to the fly in the column fly_knot",
}
_YES_NO = {"yes": True, "true": True, "no": False, "false": False}


class TableRead(NamedTuple):
    """What a table holds."""

    recipes: tuple[Recipe, ...]
    faults: tuple[Fault, ...]  # each with its row and column


def read_table(data: bytes, words: Vocabulary) -> TableRead:
    """Return the recipes of a CSV file; one with a fault is left out, and its faults told.

    Raises `Refused` for a file that cannot be taken apart into rows and known columns.
    """
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    last_rows: dict[str, int] = {}  # by name
    for rows in _leaders(csv_rows(data)):
        with noting(faults):
            recipes.append(_recipe(rows, last_rows, words))
        last_rows[_name(rows)] = rows[-1].number
    return TableRead(tuple(recipes), tuple(faults))


def _leaders(rows: Sequence[TableRow]) -> Iterator[list[TableRow]]:
    """Yield the rows of each leader: until another name, or the number 1, begins the next."""
    leader: list[TableRow] = []
    for row in rows:
        name = row.cells.get("name")
        begins = row.cells.get(NUMBER) == "1" or name not in (None, leader and _name(leader))
        if leader and begins:
            yield leader
            leader = []
        leader.append(row)
    if leader:
        yield leader


def _name(rows: Sequence[TableRow]) -> str:
    return rows[0].cells.get("name", "")


def _recipe(rows: Sequence[TableRow], last_rows: Mapping[str, int], words: Vocabulary) -> Recipe:
    faults = [*_repeated(rows[0], last_rows), *_row_faults(rows)]
    try:
        recipe = recipe_of(_tables(rows), words)
    except Refused as refusal:
        faults += (_placed(fault, rows) for fault in refusal.faults)
    refuse_any(faults)
    return recipe


def _repeated(first: TableRow, last_rows: Mapping[str, int]) -> Iterator[Fault]:
    """Find a leader whose rows were torn apart; one that is numbered from 1 is another."""
    name = first.cells.get("name", "")
    if name in last_rows and first.cells.get(NUMBER) != "1":
        yield Fault(
            f"row {first.number}, name",
            f"{name!r} ended in row {last_rows[name]}",
            "put the rows of a leader together, or number the sections of each from 1",
        )


def _row_faults(rows: Sequence[TableRow]) -> Iterator[Fault]:
    first = rows[0].cells
    for place, row in enumerate(rows, start=1):
        where = f"row {row.number}"
        if row.beyond:
            found = f"{row.beyond[:40]!r} is beyond the last column"
            yield Fault(where, found, "put a cell that holds commas in quotes")
        if row.cells.get(NUMBER, str(place)) != str(place):
            found = f"{row.cells[NUMBER][:40]!r} stands where section {place} comes"
            yield Fault(f"{where}, {NUMBER}", found, "number from the butt, or leave it empty")
        for column in OF_RECIPE:
            said = row.cells.get(column)
            if said is not None and said != first.get(column):
                found = f"{said[:40]!r} differs from row {rows[0].number}"
                yield Fault(f"{where}, {column}", found, "write it in the leader's first row only")


def _tables(rows: Sequence[TableRow]) -> dict[str, object]:
    """Return the tables of a recipe file that say the same."""
    cells = rows[0].cells
    tables: dict[str, object] = {"section": [_table(OF_SECTION, row.cells) for row in rows]}
    begun = (OF_RECIPE[name].heading for name in cells if name in OF_RECIPE)
    for heading in dict.fromkeys(("", *begun)):
        columns = {name: field for name, field in OF_RECIPE.items() if field.heading == heading}
        table = _table(columns, cells)
        tables |= {heading: table} if heading else table
    return tables


def _table(columns: Mapping[str, Field], cells: Mapping[str, str]) -> dict[str, object]:
    return {
        field.key: _value(field, cells.get(name, ""))
        for name, field in columns.items()
        if name in cells or field.needed
    }


def _value(field: Field, cell: str) -> object:
    """Return what a recipe file would hold; what it cannot is left for its reader to refuse."""
    match field.reads:
        case {"type": "bool"}:
            return _YES_NO.get(cell.lower(), cell)
        case {"type": "int"} if cell.isdecimal() and len(cell) < 3:
            return int(cell)
        case {"type": "literal"}:
            return cell.lower()
    return cell


def _placed(fault: Fault, rows: Sequence[TableRow]) -> Fault:
    """Return a fault of a recipe file's tables by its row and column."""
    row, column = _places(rows).get(fault.where, (rows[0], fault.where))
    empty = column in COLUMNS and column != NUMBER and column not in row.cells
    return Fault(
        f"row {row.number}, {column}",
        "this cell is empty" if empty else fault.found,
        _TOLD_INSTEAD.get(fault.instead, fault.instead),
    )


def _places(rows: Sequence[TableRow]) -> dict[str, tuple[TableRow, str]]:
    """Return the row and column of each place that a fault of a recipe file can name."""
    whole = {field.path: (rows[0], name) for name, field in OF_RECIPE.items()}
    sections = {
        f"section {place}, {field.path}": (row, name)
        for place, row in enumerate(rows, start=1)
        for name, field in OF_SECTION.items()
    }
    return whole | sections
