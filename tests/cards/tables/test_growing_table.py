import csv
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.tables.growing_table import read_log, with_rows
from tagend.layouts.base.faults import Refused

COLUMNS = ("number", "name")


def rows(data: bytes) -> list[dict[str, str]]:
    return [dict(row) for _, row in read_log(data, COLUMNS)]


def test_a_new_table_begins_with_its_columns_and_opens_as_utf_8() -> None:
    data = with_rows(None, COLUMNS, [{"number": "1", "name": "Grün"}])
    assert data == b"\xef\xbb\xbfnumber,name\r\n1,Gr\xc3\xbcn\r\n"


@pytest.mark.parametrize("blank", [b"", b"\xef\xbb\xbf", b"\r\n"])
def test_an_empty_file_becomes_a_new_table(blank: bytes) -> None:
    assert with_rows(blank, COLUMNS, []) == with_rows(None, COLUMNS, [])
    assert read_log(blank, COLUMNS) == []


def test_what_is_there_stays_byte_for_byte() -> None:
    before = b'Number;My own;name\n1;"a;b";x'
    after = with_rows(before, COLUMNS, [{"number": "2", "name": "y"}])
    # Its order, its separator and its own column are kept.
    assert after == before + b"\r\n2;;y\r\n"
    assert rows(after) == [
        {"number": "1", "my_own": "a;b", "name": "x"},
        {"number": "2", "my_own": "", "name": "y"},
    ]


def test_rows_are_counted_as_a_spreadsheet_counts_them() -> None:
    data = b"number,name\n1,a\n\n,\n2\n"
    assert read_log(data, COLUMNS) == [
        (2, {"number": "1", "name": "a"}),
        (5, {"number": "2", "name": ""}),
    ]


@pytest.mark.parametrize("name", ["=1+1", "+49", "-2", "@sum", "'=x", '"', "a,b", "a\nb"])
def test_no_cell_is_a_formula_and_every_cell_comes_back(name: str) -> None:
    data = with_rows(None, COLUMNS, [{"number": "1", "name": name}])
    ((_, cell),) = list(csv.reader(StringIO(data.decode("utf-8-sig"))))[1:]
    assert cell[0] not in "=+-@"
    assert rows(data) == [{"number": "1", "name": name}]


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (
            b"number;title\n",
            "row 1: there is not one column called 'name'; its first row must hold number, name",
        ),
        (
            b"number,name,name\n",
            "row 1: there is not one column called 'name'; its first row must hold number, name",
        ),
        (
            "number,name\n1,ü\n".encode("latin-1"),
            "this is not in UTF-8; save the table as CSV in UTF-8",
        ),
        (
            b'number,name\n1,"a',
            'row 2: a quotation mark has no partner; write one inside of a cell as two: ""',
        ),
    ],
)
def test_what_is_no_such_table_is_refused_and_not_added_to(data: bytes, fault: str) -> None:
    for use in (lambda: read_log(data, COLUMNS), lambda: with_rows(data, COLUMNS, [])):
        with pytest.raises(Refused) as refusal:
            use()
        assert str(refusal.value) == fault


_cells = st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=12)


@given(st.lists(st.tuples(_cells, _cells), max_size=6), st.lists(st.tuples(_cells, _cells)))
def test_rows_come_back_however_they_were_added(
    first: list[tuple[str, str]], more: list[tuple[str, str]]
) -> None:
    named = [[dict(zip(COLUMNS, row, strict=True)) for row in part] for part in (first, more)]
    grown = with_rows(with_rows(None, COLUMNS, named[0]), COLUMNS, named[1])
    assert rows(grown) == named[0] + named[1]
    assert grown == with_rows(None, COLUMNS, named[0] + named[1])
