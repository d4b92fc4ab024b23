"""The rows of a table: the bytes of a CSV file in, rows of named cells out."""

import csv
import re
from collections.abc import Iterator, Mapping, Sequence
from io import StringIO
from typing import NamedTuple

from tagend.cards.tables.columns import COLUMNS, NEEDED, as_meant
from tagend.layouts.base.faults import Fault, refuse_any, refused
from tagend.layouts.base.near_names import suggestion

LARGEST = 10_000_000  # bytes; two hundred recipes have some hundred thousand


class Row(NamedTuple):
    """One row that is not empty."""

    number: int  # as a spreadsheet counts: the header is 1
    cells: Mapping[str, str]  # by column, those that are not empty
    beyond: str  # what stands beyond the last column


def csv_rows(data: bytes) -> list[Row]:
    """Return the rows below the header; commas, semicolons or tabs may part the cells.

    Raises `Refused` for what is no CSV file, and for a header that can't be used.
    """
    text = _text(data)
    lines = _lines(text, max(",;\t", key=text.partition("\n")[0].count))
    columns = _columns(next(lines))
    return [
        Row(number, _cells(columns, line), "".join(line[len(columns) :]).strip())
        for number, line in enumerate(lines, start=2)
        if any(map(str.strip, line))
    ]


def _text(data: bytes) -> str:
    if len(data) > LARGEST:
        raise refused("this file is too large", f"give a table of at most {LARGEST // 10**6} MB")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("this is not in UTF-8", "save the table as CSV in UTF-8") from None
    if not text.strip():
        raise refused("this file is empty", "write a table; `tagend table --columns` describes it")
    return text


def _lines(text: str, between: str) -> Iterator[list[str]]:
    number = 0
    try:
        for line in csv.reader(StringIO(text, newline=""), delimiter=between, strict=True):
            number += 1
            yield line
    except csv.Error:
        raise refused(
            "a quotation mark has no partner",
            'write one inside of a cell as two: ""',
            f"row {number + 1}",
        ) from None


def _columns(header: Sequence[str]) -> list[str]:
    """Return the columns that the header names; an empty cell names none."""
    columns = [re.sub(r"[\s_-]+", "_", cell.strip().lower()) for cell in header]
    faults = [_unknown(column) for column in columns if column and column not in COLUMNS]
    faults += [
        Fault("row 1", f"two columns are called {column!r}", "leave one out")
        for column in COLUMNS
        if columns.count(column) > 1
    ]
    faults += [
        Fault("row 1", f"no column is called {column!r}", "begin with the columns' names")
        for column in NEEDED
        if column not in columns
    ]
    refuse_any(faults)
    return columns


def _unknown(column: str) -> Fault:
    return Fault("row 1", f"{column[:40]!r} is no column", suggestion(column, list(COLUMNS)))


def _cells(columns: Sequence[str], line: Sequence[str]) -> dict[str, str]:
    return {
        column: as_meant(cell.strip())
        for column, cell in zip(columns, line, strict=False)
        if column and cell.strip()
    }
