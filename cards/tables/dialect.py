"""The CSV that spreadsheets write and read: bytes in, lines of cells out, and back.

Cells are parted by commas, semicolons or tabs, in Unicode with a byte order mark, UTF-8 or what
Windows wrote before. What is written is RFC 4180, in UTF-8 with a byte order mark, without which a
common spreadsheet takes it for an older encoding; no cell is a formula.
"""

import csv
import re
from codecs import BOM_UTF16_BE, BOM_UTF16_LE
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from io import StringIO
from statistics import median

from msgspec import Struct

from tagend.layouts.base.faults import refused

# What a spreadsheet takes for a formula, and no number: at the beginning of a cell, or behind what
# another country's spreadsheet parts cells by, which no quotation marks around all of it prevent.
_FORMULA = r"""(?:^|(?<=[,;\t\r\n])){}(?!-[0-9.]+(?:$|[,;\t]))(?=[\s"']*[=+\-@＝＋－＠])"""
_BARE, _QUOTED = (re.compile(_FORMULA.format(mark)) for mark in ("", "'"))

_NO_WRITING = re.compile(r"[\x00-\x08\x0e-\x1f]")
_SOUNDED = 40  # lines: a title above the headings may hold any sign
_SIGNS = {  # a comma between digits may be a decimal one
    ",": re.compile(r"(?<!\d),|,(?!\d)"),
    ";": re.compile(";"),
    "\t": re.compile("\t"),
}


class Lines(Struct, frozen=True):
    """What a table holds, line by line."""

    header: tuple[str, ...]  # in small letters, with _ for spaces
    rows: tuple[tuple[int, Sequence[str]], ...]  # numbered; the header is 1
    between: str  # what parts the cells


def read_lines(data: bytes) -> Lines | None:
    """Return the header and the rows that are not empty, or None for a file without any text.

    Raises `Refused` for what is no CSV file.
    """
    cells = read_cells(data)
    if cells is None:
        return None
    (header, *rows), between = cells
    numbered = enumerate(rows, start=2)
    return Lines(
        header=tuple(map(_column_name, header)),
        rows=tuple((number, row) for number, row in numbered if any(map(str.strip, row))),
        between=between,
    )


def read_cells(data: bytes) -> tuple[list[list[str]], str] | None:
    """Return the lines of cells and what parts them, or None for a file without any text.

    Raises `Refused` for what is no CSV file.
    """
    text = _text(data)
    return (_cells(text, between := _between(text)), between) if text.strip() else None


def _text(data: bytes) -> str:
    """Return the text, told by its byte order mark, else as UTF-8, else as Windows wrote it."""
    utf_16 = data.startswith((BOM_UTF16_LE, BOM_UTF16_BE))
    for encoding in ("utf-16",) if utf_16 else ("utf-8-sig", "cp1252"):
        with suppress(UnicodeDecodeError):
            text = data.decode(encoding)
            if _NO_WRITING.search(text) is None:
                return text
    raise refused("this is not a table", "save it as .csv, .xlsx or .ods")


def _between(text: str) -> str:
    """Return what parts the cells: of three signs the one that most lines have most of."""
    lines = [line for line in text.splitlines()[:_SOUNDED] if line.strip()]
    return max(_SIGNS, key=lambda sign: median(len(_SIGNS[sign].findall(line)) for line in lines))


def named_cells(header: Sequence[str], row: Sequence[str]) -> dict[str, str]:
    """Return a row's cells by column, as they were meant; one without a name names no cell."""
    named = zip(header, row, strict=False)
    return {column: as_meant(cell.strip()) for column, cell in named if column}


def written_rows(
    columns: Sequence[str], rows: Iterable[Mapping[str, str]], between: str = ","
) -> bytes:
    """Return rows as they are added to a table; a row's missing cells are empty."""
    text = StringIO()
    writer = csv.writer(text, delimiter=between, lineterminator="\r\n")
    writer.writerows([harmless(row.get(column, "")) for column in columns] for row in rows)
    return text.getvalue().encode()


def written_table(columns: Sequence[str], rows: Iterable[Mapping[str, str]]) -> bytes:
    """Return a whole table with its header."""
    header = {column: column for column in columns}
    return "\ufeff".encode() + written_rows(columns, [header, *rows])


def harmless(text: str) -> str:
    """Return the text of a cell in which no spreadsheet finds a formula."""
    return _BARE.sub("'", text)


def as_meant(cell: str) -> str:
    """Return the text that `harmless` was given."""
    return _QUOTED.sub("", cell)


def _column_name(cell: str) -> str:
    return re.sub(r"[\s_-]+", "_", cell.strip().lower())


def _cells(text: str, between: str) -> list[list[str]]:
    lines: list[list[str]] = []
    try:
        for line in csv.reader(StringIO(text, newline=""), delimiter=between, strict=True):
            lines.append(line)
    except csv.Error:
        raise refused(
            "a quotation mark has no partner",
            'write one inside of a cell as two: ""',
            f"row {len(lines) + 1}",
        ) from None
    return lines
