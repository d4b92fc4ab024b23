"""The bytes of a table in, of whatever spreadsheet; its sheets as grids of cells out."""

from pathlib import PurePath

from tagend.cards.tables.dialect import as_meant, read_cells
from tagend.cards.tables.grid import MOST_COLUMNS, MOST_ROWS, SheetCells
from tagend.cards.tables.sheets import is_spreadsheet, read_sheets
from tagend.layouts.base.faults import refused

LARGEST = 10_000_000  # bytes; two hundred recipes have some hundred thousand


def open_table(data: bytes) -> tuple[SheetCells, ...]:
    """Return the sheets of a spreadsheet, or the one of a CSV file; raises `Refused`."""
    if len(data) > LARGEST:
        raise refused("this file is too large", f"give a table of at most {LARGEST // 10**6} MB")
    grids = read_sheets(data) if is_spreadsheet(data) else _csv_grid(data)
    if not any(any(row) for grid in grids for row in grid.rows):
        raise refused("this file is empty", "write a table; `tagend table --columns` describes it")
    return grids


def check_is_table(name: str) -> None:
    """Raise `Refused` for the file by which an office program says that it has a table open."""
    if PurePath(name).name.startswith(("~$", ".~lock.")):
        raise refused("this only says that the table is open elsewhere", "name the table itself")


def _csv_grid(data: bytes) -> tuple[SheetCells, ...]:
    cells = read_cells(data)
    if cells is None:
        return ()
    lines, between = cells
    if len(lines) > MOST_ROWS or max(map(len, lines)) > MOST_COLUMNS:
        instead = f"give one of at most {MOST_ROWS} rows and {MOST_COLUMNS} columns"
        raise refused("this table is too large", instead)
    rows = tuple([as_meant(cell.strip()) for cell in line] for line in lines)
    return (SheetCells(rows=rows, comma=between == ";", ragged=True),)
