"""A table that only grows: the bytes of a CSV file and new rows in; rows, or longer bytes, out.

A person may sort it, add columns of their own or part its cells by semicolons.
"""

from collections.abc import Iterable, Mapping, Sequence

from tagend.cards.tables.dialect import (
    Lines,
    named_cells,
    read_lines,
    written_rows,
    written_table,
)
from tagend.layouts.base.faults import refused

LogRow = Mapping[str, str]  # by column


def read_log(data: bytes, columns: Sequence[str]) -> list[tuple[int, LogRow]]:
    """Return the rows with their numbers, as a spreadsheet counts them: the header is 1.

    Raises `Refused` for what is no such table.
    """
    lines = _lines(data, columns)
    if lines is None:
        return []
    empty = dict.fromkeys(lines.header, "")
    return [(number, empty | named_cells(lines.header, row)) for number, row in lines.rows]


def with_rows(data: bytes | None, columns: Sequence[str], rows: Iterable[LogRow]) -> bytes:
    """Return the table with rows added at its end, or a new one.

    What is there stays as it is, byte for byte. Raises `Refused` for what is no such table.
    """
    lines = _lines(data or b"", columns)
    if data is None or lines is None:
        return written_table(columns, rows)
    end = b"" if data.endswith(b"\n") else b"\r\n"
    return data + end + written_rows(lines.header, rows, lines.between)


def _lines(data: bytes, columns: Sequence[str]) -> Lines | None:
    """Return what the table holds, once each of the columns is found to be there once."""
    lines = read_lines(data)
    missing = [column for column in columns if lines and lines.header.count(column) != 1]
    if missing:
        raise refused(
            f"there is not one column called {missing[0]!r}",
            f"its first row must hold {', '.join(columns)}",
            "row 1",
        )
    return lines
