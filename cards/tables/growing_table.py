"""A table that only grows: the bytes of a CSV file and new rows in; rows, or longer bytes, out.

It is the CSV that spreadsheets write and read: a person may sort it, add columns of their own or
part its cells by semicolons.
"""

import csv
from codecs import BOM_UTF8
from collections.abc import Iterable, Mapping, Sequence
from io import StringIO

from tagend.cards.tables.columns import as_meant, harmless
from tagend.layouts.base.faults import refused

Row = Mapping[str, str]  # by column


def read_log(data: bytes, columns: Sequence[str]) -> list[tuple[int, Row]]:
    """Return the rows with their numbers, as a spreadsheet counts them: the header is 1.

    Raises `Refused` for what is no such table.
    """
    if _is_blank(data):
        return []
    lines, _ = _lines(data)
    header = _header(lines[0], columns)
    return [
        (number, {**dict.fromkeys(header, ""), **_cells(header, line)})
        for number, line in enumerate(lines[1:], start=2)
        if any(map(str.strip, line))
    ]


def with_rows(data: bytes | None, columns: Sequence[str], rows: Iterable[Row]) -> bytes:
    """Return the table with rows added at its end, or a new one: RFC 4180, in UTF-8 with a mark.

    What is there stays as it is, byte for byte. Without the byte order mark a common spreadsheet
    takes UTF-8 for an older encoding. Raises `Refused` for what is no such table.
    """
    if data is None or _is_blank(data):
        names = dict(zip(columns, columns, strict=True))
        return _written(columns, [names, *rows]).encode("utf-8-sig")
    lines, between = _lines(data)
    more = _written(_header(lines[0], columns), rows, between)
    end = b"" if data.endswith(b"\n") else b"\r\n"
    return data + end + more.encode()


def _is_blank(data: bytes) -> bool:
    return not data.removeprefix(BOM_UTF8).strip()


def _lines(data: bytes) -> tuple[list[list[str]], str]:
    """Return the cells of every line, and what parts them."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("this is not in UTF-8", "save the table as CSV in UTF-8") from None
    between = max(",;\t", key=text.partition("\n")[0].count)
    try:
        return list(csv.reader(StringIO(text, newline=""), delimiter=between, strict=True)), between
    except csv.Error as error:
        raise refused(f"this is no table: {error}", "mend its quotation marks") from None


def _header(line: Sequence[str], columns: Sequence[str]) -> list[str]:
    header = [cell.strip().lower() for cell in line]
    missing = [column for column in columns if header.count(column) != 1]
    if missing:
        raise refused(
            f"there is not one column called {missing[0]!r}",
            f"its first row must hold {', '.join(columns)}",
            "row 1",
        )
    return header


def _cells(header: Sequence[str], line: Sequence[str]) -> dict[str, str]:
    return {name: as_meant(cell.strip()) for name, cell in zip(header, line, strict=False)}


def _written(header: Sequence[str], rows: Iterable[Row], between: str = ",") -> str:
    text = StringIO()
    writer = csv.writer(text, delimiter=between, lineterminator="\r\n")
    writer.writerows([harmless(row.get(name, "")) for name in header] for row in rows)
    return text.getvalue()
