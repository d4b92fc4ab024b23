"""The cells of one sheet as text, each known by its address: `B7`."""

from collections.abc import Sequence

from msgspec import Struct

MOST_COLUMNS = 300
MOST_ROWS = 20_000


class SheetCells(Struct, frozen=True):
    """What a sheet holds, line by line, as a spreadsheet shows it."""

    rows: tuple[Sequence[str], ...]  # trimmed texts; dates as 2026-05-31
    sheet: str = ""  # its name, where a file has several
    comma: bool = False  # its numbers have a decimal comma
    ragged: bool = False  # a line may hold more cells than there are headings

    def cell(self, row: int, column: int) -> str:
        """Return the text of a cell, counted from 0; empty beyond the end of its line."""
        line = self.rows[row]
        return line[column] if column < len(line) else ""

    def address(self, row: int, column: int) -> str:
        """Return where a cell stands, as a spreadsheet counts: `B7`, or `Salt!B7`."""
        sheet = f"{self.sheet}!" if self.sheet else ""
        return f"{sheet}{column_letters(column)}{row + 1}"


def column_letters(column: int) -> str:
    """Return what a spreadsheet calls a column, counted from 0: `A`, …, `Z`, `AA`."""
    before, last = divmod(column, 26)
    return (column_letters(before - 1) if before else "") + chr(ord("A") + last)
