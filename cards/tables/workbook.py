"""Tables of text and numbers in; the bytes of a spreadsheet's workbook (.xlsx) out."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from io import BytesIO

from tagend.layouts.base.faults import refused

_BEGUN = datetime(2000, 1, 1)  # noqa: DTZ001 - a fixed day, so that the same input gives the same bytes

Sheet = Iterable[Sequence[str | int | float | None]]  # the columns' names first


def workbook(sheets: Mapping[str, Sheet]) -> bytes:
    """Return a workbook with a sheet for each table; no cell of it is a formula.

    Raises `Refused` where the library for it is not installed.
    """
    try:
        from xlsxwriter import Workbook
    except ImportError:
        instead = "install it with `pip install 'tagend[sheets]'`, or write a .csv"
        raise refused("a workbook needs one more package", instead) from None
    data = BytesIO()
    book = Workbook(data, {"in_memory": True, "strings_to_formulas": False})
    book.set_properties({"created": _BEGUN})
    bold = book.add_format({"bold": True})
    for name, (columns, *rows) in sheets.items():
        sheet = book.add_worksheet(name)
        sheet.freeze_panes(1, 0)
        sheet.write_row(0, 0, columns, bold)
        for place, row in enumerate(rows, start=1):
            for column, cell in enumerate(row):
                if isinstance(cell, str):
                    sheet.write_string(place, column, cell)
                elif cell is not None:
                    sheet.write_number(place, column, cell)
        sheet.autofit()
    book.close()
    return data.getvalue()
