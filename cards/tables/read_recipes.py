"""A table of recipes: the bytes of a CSV file in; the good recipes, and the faults of the rest."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.tables.columns import IN_TABLE, NEEDED, NUMBER, OF_RECIPE, OF_SECTION
from tagend.cards.tables.rows import Row, csv_rows
from tagend.layouts.base.faults import Fault, Refused, refuse_any

# What is told of a recipe file, and what of a table instead.
_TOLD_INSTEAD = {
    "write true or false, without quotes": "write yes, or nothing",
    "write a whole number, without quotes": "write a number from 1 to 15",
    "write the knot to the fly under [fly]": "write the knot to the fly in the column fly_knot",
}
_YES_NO = {"yes": True, "true": True, "no": False, "false": False}


class Table(NamedTuple):
    """What a table holds."""

    recipes: tuple[Recipe, ...]
    faults: tuple[Fault, ...]  # each with its row and column


def read_table(data: bytes, practice: Practice) -> Table:
    """Return the recipes of a CSV file; one with a fault is left out, and its faults told.

    Raises `Refused` for a file that cannot be taken apart into rows and known columns.
    """
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    last_rows: dict[str, int] = {}  # by name
    for rows in _leaders(csv_rows(data)):
        try:
            recipes.append(_recipe(rows, last_rows, practice))
        except Refused as refusal:
            faults += refusal.faults
        last_rows[_name(rows)] = rows[-1].number
    return Table(tuple(recipes), tuple(faults))


def _leaders(rows: Sequence[Row]) -> Iterator[list[Row]]:
    """Yield the rows of each leader: until another name, or the number 1, begins the next."""
    leader: list[Row] = []
    for row in rows:
        name = row.cells.get("name")
        begins = row.cells.get(NUMBER) == "1" or name not in (None, leader and _name(leader))
        if leader and begins:
            yield leader
            leader = []
        leader.append(row)
    if leader:
        yield leader


def _name(rows: Sequence[Row]) -> str:
    return rows[0].cells.get("name", "")


def _recipe(rows: Sequence[Row], last_rows: Mapping[str, int], practice: Practice) -> Recipe:
    faults = [*_repeated(rows[0], last_rows), *_row_faults(rows)]
    try:
        recipe = recipe_of(_tables(rows), practice)
    except Refused as refusal:
        faults += (_placed(fault, rows) for fault in refusal.faults)
    refuse_any(faults)
    return recipe


def _repeated(first: Row, last_rows: Mapping[str, int]) -> Iterator[Fault]:
    """Find a leader whose rows were torn apart; one that is numbered from 1 is another."""
    name = first.cells.get("name", "")
    if name in last_rows and first.cells.get(NUMBER) != "1":
        yield Fault(
            f"row {first.number}, name",
            f"{name!r} ended in row {last_rows[name]}",
            "put the rows of a leader together, or number the sections of each from 1",
        )


def _row_faults(rows: Sequence[Row]) -> Iterator[Fault]:
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


def _tables(rows: Sequence[Row]) -> dict[str, object]:
    """Return the tables of a recipe file that say the same."""
    tables: dict[str, object] = {"section": [_section(row) for row in rows]}
    inner: dict[str, dict[str, object]] = {}
    for column, cell in rows[0].cells.items():
        if column in IN_TABLE:
            table, key = IN_TABLE[column]
            inner.setdefault(table, {})[key] = cell
        elif column in OF_RECIPE:
            tables[column] = _value(column, cell)
    if "reach" in inner:
        inner["reach"] = {"line_out": "", "rod": "", **inner["reach"]}
    return {"name": "", **tables, **inner}


def _section(row: Row) -> dict[str, object]:
    cells = {column: row.cells.get(column, "") for column in OF_SECTION}
    return {
        column: _value(column, cell) for column, cell in cells.items() if cell or column in NEEDED
    }


def _value(column: str, cell: str) -> object:
    """Return what a recipe file would hold; what it cannot is left for its reader to refuse."""
    if column in ("record_lengths", "bought"):
        return _YES_NO.get(cell.lower(), cell)
    if column == "line_weight" and cell.isdecimal() and len(cell) < 3:
        return int(cell)
    return cell.lower() if column in ("lengths", "part") else cell


def _placed(fault: Fault, rows: Sequence[Row]) -> Fault:
    """Return a fault of a recipe file's tables by its row and column."""
    row, column = _places(rows).get(fault.where, (rows[0], fault.where))
    empty = column in {**OF_RECIPE, **OF_SECTION} and column not in row.cells
    return Fault(
        f"row {row.number}, {column}",
        "this cell is empty" if empty else fault.found,
        _TOLD_INSTEAD.get(fault.instead, fault.instead),
    )


def _places(rows: Sequence[Row]) -> dict[str, tuple[Row, str]]:
    """Return the row and column of each place that a fault of a recipe file can name."""
    whole = {", ".join(IN_TABLE.get(column, (column,))): (rows[0], column) for column in OF_RECIPE}
    sections = {
        f"section {place}, {column}": (row, column)
        for place, row in enumerate(rows, start=1)
        for column in OF_SECTION
    }
    return whole | sections
