"""What is a table and what is none, whoever wrote the file."""

import sys
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile

import pytest

from tagend.cards.tables.grid import MOST_COLUMNS, column_letters
from tagend.cards.tables.open_table import LARGEST, open_table
from tagend.cards.tables.sheets import sheet_cells
from tagend.layouts.base.faults import Refused
from tagend.layouts.strangers.unreadable import Unreadable
from tests.cards.tables.books import BOOKS, xlsx

LEVEL = [["name", "length", "diameter"], ["Level", "9 ft", "4X"]]


def cells(data: bytes) -> list[list[str]]:
    (grid,) = open_table(data)
    return [list(row) for row in grid.rows]


@pytest.mark.parametrize("between", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_table_is_read_as_spreadsheets_write_it(between: str, encoding: str, end: str) -> None:
    lines = [*LEVEL, ["Über", "2,5 m", "5X"]]
    quoted = [[f'"{cell}"' if "," in cell else cell for cell in line] for line in lines]
    assert cells(end.join(map(between.join, quoted)).encode(encoding)) == lines


def test_decimal_commas_are_not_what_parts_the_cells() -> None:
    text = "name;length;diameter\nA;76,5;0,58\nB;50,5;0,40\n"
    (grid,) = open_table(text.encode())
    assert (grid.comma, len(grid.rows[1])) == (True, 3)


def test_lines_of_text_above_do_not_decide_what_parts_the_cells() -> None:
    text = "Ours; not theirs; since May; all of it\n\nname,length,diameter\nA,9 ft,4X\nB,9 ft,5X\n"
    assert cells(text.encode())[2] == ["name", "length", "diameter"]


def test_an_apostrophe_before_a_formula_is_taken_off() -> None:
    assert cells(b"name,length\n'=A1,9 ft") == [["name", "length"], ["=A1", "9 ft"]]


def test_columns_are_called_as_in_a_spreadsheet() -> None:
    assert [column_letters(n) for n in (0, 25, 26, 51, 52, 701, 702)] == [
        *("A", "Z", "AA", "AZ", "BA", "ZZ", "AAA")
    ]


def test_a_number_has_nothing_that_arithmetic_added() -> None:
    data = xlsx(lambda book: book.add_worksheet().write_row(0, 0, (0.1 + 0.2, 24, 1e300)))
    assert cells(data)[0][:2] == ["0.3", "24"]


def test_what_reads_spreadsheets_is_named_where_it_is_missing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "python_calamine", None)
    with pytest.raises(Unreadable, match=r"pip install 'tagend\[sheets\]'"):
        sheet_cells(BOOKS["merged.xlsx"]())


def zipped(name: str, content: bytes) -> bytes:
    data = BytesIO()
    with ZipFile(data, "w", ZIP_DEFLATED) as archive:
        archive.writestr(name, content)
    return data.getvalue()


def far() -> bytes:
    return xlsx(lambda book: book.add_worksheet().write(0, MOST_COLUMNS + 1, "far"))


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (b"", "this file is empty"),
        (b" \r\n", "this file is empty"),
        (xlsx(lambda book: book.add_worksheet()), "this file is empty"),
        (b"," * (LARGEST + 1), "too large"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "this is not a table"),
        (b'name,length\n"Low,9 ft\n', "row 2: a quotation mark"),
        (b",".join([b"a"] * (MOST_COLUMNS + 1)), "too large"),
        (zipped("word/document.xml", b"<x/>"), "no spreadsheet"),
        (BOOKS["merged.xlsx"]()[:2000], "damaged"),
        (zipped("xl/workbook.xml", bytes(200_000_000)), "unfolds to more"),
        (far(), "columns"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "password"),
    ],
    ids=range(12),
)
def test_what_is_no_table_is_refused(data: bytes, fault: str) -> None:
    with pytest.raises(Refused, match=fault):
        open_table(data)
