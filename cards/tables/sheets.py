"""The bytes of a spreadsheet (.xlsx, .xls, .ods) in, its sheets' cells as text out; read apart."""

from datetime import date, datetime
from io import BytesIO
from typing import Any

from tagend.cards.tables.grid import MOST_COLUMNS, MOST_ROWS, SheetCells
from tagend.layouts.base.faults import refused
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable, library

_ZIP, _OLE = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"
_MOST_BYTES = 100_000_000  # of all that a file unfolds to; a list of 200 recipes has one million
_MOST_SHEETS = 30
_SMALLER = "copy the formulas into a table of their own"


def is_spreadsheet(data: bytes) -> bool:
    """Whether data begins as the file of a spreadsheet does, which is no text."""
    return data.startswith((_ZIP, _OLE))


def read_sheets(data: bytes) -> tuple[SheetCells, ...]:
    """Return the sheets that are not hidden and not empty; raises `Refused`."""
    try:
        sheets = apart(sheet_cells, data)
    except Unreadable as bad:
        raise refused(bad.found, bad.instead) from None
    several = len(sheets) > 1
    return tuple(
        SheetCells(rows=tuple(rows), sheet=name if several else "") for name, rows in sheets.items()
    )


def sheet_cells(data: bytes) -> dict[str, list[list[str]]]:
    """Return the lines of each sheet by its name, in this process. Raises `Unreadable`."""
    calamine = library("python_calamine", "tagend[sheets]")
    _check_size(data)
    try:
        book = calamine.CalamineWorkbook.from_filelike(BytesIO(data))
    except calamine.PasswordError:
        raise Unreadable("it is locked with a password", "save it without one") from None
    except calamine.CalamineError:
        if data.startswith(_OLE):  # in which both old and locked files are kept
            found = "it is locked with a password, or no spreadsheet"
            raise Unreadable(found, "save it without a password, as .xlsx or .csv") from None
        raise Unreadable(
            "this is no spreadsheet", "save the table as .xlsx, .ods or .csv"
        ) from None
    visible = calamine.SheetVisibleEnum.Visible
    shown = [sheet.name for sheet in book.sheets_metadata if sheet.visible == visible]
    if len(shown) > _MOST_SHEETS:
        raise Unreadable(f"it has {len(shown)} sheets, more than {_MOST_SHEETS}", _SMALLER)
    read = {name: _lines(book.get_sheet_by_name(name)) for name in shown}
    return {name: lines for name, lines in read.items() if lines}


def _check_size(data: bytes) -> None:
    """Refuse a file that unfolds to more than any table has, by its own word."""
    from zipfile import ZipFile

    if data.startswith(_ZIP):
        with ZipFile(BytesIO(data)) as archive:
            if sum(part.file_size for part in archive.infolist()) > _MOST_BYTES:
                most = f"more than {_MOST_BYTES // 10**6} MB"
                raise Unreadable(f"it unfolds to {most}", _SMALLER)


def _lines(sheet: Any) -> list[list[str]]:
    height, width = sheet.total_height + 1, sheet.total_width + 1  # it counts from 0
    if height > MOST_ROWS or width > MOST_COLUMNS:
        found = f"a sheet has {height} rows and {width} columns"
        raise Unreadable(found, f"{_SMALLER}, of at most {MOST_ROWS} and {MOST_COLUMNS}")
    return [list(map(_text, row)) for row in sheet.to_python(skip_empty_area=False)]


def _text(cell: object) -> str:
    """Return what a cell says; a number without what a computer's arithmetic adds to it."""
    match cell:
        case bool():
            return "yes" if cell else "no"
        case float():
            return f"{cell:.10g}" if abs(cell) < 1e10 else str(cell)
        case datetime():
            return cell.date().isoformat()
        case date():
            return cell.isoformat()
    return str(cell).strip()
