"""Invented workbooks as shops keep them, made here, since their bytes say nothing to a reader."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from io import BytesIO
from typing import Any
from zipfile import ZipFile

from xlsxwriter import Workbook

Row = Sequence[object]


def xlsx(fill: Callable[[Any], None]) -> bytes:
    """Return a workbook that a function has filled."""
    data = BytesIO()
    book = Workbook(data, {"in_memory": True, "default_date_format": "d mmm yyyy"})
    fill(book)
    book.close()
    return data.getvalue()


def rows(sheet: Any, *lines: Row) -> None:
    for place, line in enumerate(lines):
        for column, cell in enumerate(line):
            if cell is not None:
                sheet.write(place, column, cell)


def merged(book: Any) -> None:
    sheet = book.add_worksheet()
    sheet.merge_range("A1:H1", "Boathouse leaders, hard nylon")
    rows(
        sheet,
        (),
        ("Leader", "Tied on", "Butt", None, "Mid", None, "Tippet", None),
        (None, None, "Length", "Dia", "Length", "Dia", "Length", "Dia"),
        ("Weirside four", date(2026, 5, 31), 40, 0.019, 18, 0.014, 30, 0.008),
        ("Eddy five", date(2026, 6, 1), "3 1/2 ft", 0.02, 20, 0.015, '36"', "4X"),
        ("Average", None, 41, None, 19, None, 33),
    )
    for cells, text in (("C2:D2", "Butt"), ("E2:F2", "Mid"), ("G2:H2", "Tippet")):
        sheet.merge_range(cells, text)


def formulas(book: Any) -> None:
    sheet = book.add_worksheet()
    rows(
        sheet,
        ("Leader", "L1 (in)", "D1 (in)", "L2 (in)", "D2 (in)", "Total length (in)", "Material"),
        ("Culm six", 50, 0.021, None, 0.01, None, "Mono"),
        ("Fen six", 50, 0.021, None, 0.01, None, "Mono"),
    )
    sheet.write_formula("D2", "=B2*0.8", None, 40)
    sheet.write_formula("F2", "=B2+D2", None, 90)
    sheet.write_formula("D3", "=B3/0", None, "#DIV/0!")


def several_sheets(book: Any) -> None:
    head = ("Leader", "Butt (in)", "Butt dia (in)", "Tippet (in)", "Tippet dia (in)", "Line type")
    rows(book.add_worksheet("Read me"), ("Prices hold until autumn",))
    rows(book.add_worksheet("Salt"), head, ("Skerry nine", 60, 0.027, 24, 0.016, "Stiff mono"))
    rows(book.add_worksheet("Trout"), head, ("Riffle four", 50, 0.019, 40, "5X", "Nylon"),
         ("Pool four", 50, "x", 40, "6X", "Nylon"))  # fmt: skip
    rows(book.add_worksheet("Prices"), ("Leader", "Price"), ("Skerry nine", 9.5))
    hidden = book.add_worksheet("Old")
    rows(hidden, head, ("Groyne two", 1, 2, 3, 4, "Rope"))
    hidden.hide()


def turned_into_dates(book: Any) -> None:
    sheet = book.add_worksheet()
    rows(
        sheet,
        ("Leader", "Butt length", "Butt dia", "Tippet length", "Tippet dia", "Material"),
        ("Sedge five", "40 in", ".02 in", "20 in", "3X", "nylon"),
        ("Caddis five", "40 in", ".02 in", date(2026, 1, 2), "3X", "nylon"),
    )


def ods(*lines: Row) -> bytes:
    """Return an OpenDocument spreadsheet of one sheet."""
    name = "urn:oasis:names:tc:opendocument:xmlns"
    table = "".join(
        f"<table:table-row>{''.join(map(_ods_cell, line))}</table:table-row>" for line in lines
    )
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content '
        f'xmlns:office="{name}:office:1.0" xmlns:table="{name}:table:1.0" '
        f'xmlns:text="{name}:text:1.0" office:version="1.3"><office:body><office:spreadsheet>'
        f'<table:table table:name="Hoja1">{table}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    data = BytesIO()
    with ZipFile(data, "w") as archive:
        archive.writestr("mimetype", kind)
        archive.writestr("content.xml", content)
        archive.writestr(
            "META-INF/manifest.xml",
            '<?xml version="1.0" encoding="UTF-8"?><manifest:manifest '
            f'xmlns:manifest="{name}:manifest:1.0"><manifest:file-entry manifest:full-path="/" '
            f'manifest:media-type="{kind}"/></manifest:manifest>',
        )
    return data.getvalue()


def _ods_cell(cell: object) -> str:
    if isinstance(cell, (int, float)):
        return (
            f'<table:table-cell office:value-type="float" office:value="{cell}">'
            f"<text:p>{cell}</text:p></table:table-cell>"
        )
    text = f"<text:p>{cell}</text:p>"
    return f'<table:table-cell office:value-type="string">{text}</table:table-cell>'


BOOKS: Mapping[str, Callable[[], bytes]] = {
    "merged.xlsx": lambda: xlsx(merged),
    "formulas.xlsx": lambda: xlsx(formulas),
    "several-sheets.xlsx": lambda: xlsx(several_sheets),
    "turned-into-dates.xlsx": lambda: xlsx(turned_into_dates),
    "hoja.ods": lambda: ods(
        ("Bajo", "Largo 1 (cm)", "Grosor 1 (mm)", "Largo 2 (cm)", "Grosor 2 (mm)", "Hilo"),
        ("Arroyo tres", 110, 0.48, 70, 0.2, "monofilamento"),
        ("Remanso tres", 120, 0.5, "60 a 80", 0.18, "monofilamento"),
    ),
}
