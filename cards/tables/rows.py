"""The rows of a table of recipes: the bytes of a CSV file in, rows of named cells out."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tagend.cards.tables.columns import COLUMNS, NEEDED
from tagend.cards.tables.dialect import named_cells, read_lines
from tagend.layouts.base.faults import Fault, refuse_any, refused
from tagend.layouts.base.near_names import suggestion

LARGEST = 10_000_000  # bytes; two hundred recipes have some hundred thousand


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row that is not empty."""

    number: int  # as a spreadsheet counts: the header is 1
    cells: Mapping[str, str]  # by column, those that are not empty
    beyond: str  # what stands beyond the last column


def csv_rows(data: bytes) -> list[TableRow]:
    """Return the rows below the header.

    Raises `Refused` for what is no CSV file, and for a header that can't be used.
    """
    if len(data) > LARGEST:
        raise refused("this file is too large", f"give a table of at most {LARGEST // 10**6} MB")
    lines = read_lines(data)
    if lines is None:
        raise refused("this file is empty", "write a table; `tagend table --columns` describes it")
    header = lines.header
    refuse_any(_header_faults(header))
    return [
        TableRow(
            number=number,
            cells={name: cell for name, cell in named_cells(header, row).items() if cell},
            beyond="".join(row[len(header) :]).strip(),
        )
        for number, row in lines.rows
    ]


def _header_faults(header: Sequence[str]) -> Iterator[Fault]:
    for name in header:
        if name and name not in COLUMNS:
            yield Fault("row 1", f"{name[:40]!r} is no column", suggestion(name, COLUMNS))
    for column in COLUMNS:
        if header.count(column) > 1:
            yield Fault("row 1", f"two columns are called {column!r}", "leave one out")
    for column in NEEDED:
        if column not in header:
            found = f"no column is called {column!r}"
            yield Fault("row 1", found, "begin with the columns' names")
