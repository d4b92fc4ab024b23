import pytest

from tagend.cards.tables.columns import COLUMNS
from tagend.cards.tables.rows import LARGEST, TableRow, csv_rows
from tagend.layouts.base.faults import Refused

HEADER = "name,length,diameter,material"
CELLS = {"name": "Level", "length": "9 ft", "diameter": "4X", "material": "nylon"}
LEVEL = "Level,9 ft,4X,nylon"


def rows(text: str) -> list[TableRow]:
    return csv_rows(text.encode())


@pytest.mark.parametrize(
    "text",
    [
        f"{HEADER}\n{LEVEL}\n",
        f"\ufeff{HEADER}\r\n{LEVEL}\r\n",
        f"{HEADER}\n{LEVEL}".replace(",", ";"),
        f"{HEADER}\n{LEVEL}".replace(",", "\t"),
        f"{HEADER},,\n{LEVEL},,\n",
        "Name,LENGTH, Diameter ,material\n Level , 9 ft,4X ,nylon\n",
        f'{HEADER}\n"Level","9 ft",4X,nylon\n',
    ],
)
def test_a_table_is_read_as_spreadsheets_write_it(text: str) -> None:
    assert rows(text) == [TableRow(2, CELLS, "")]


def test_rows_count_as_in_a_spreadsheet() -> None:
    split = f'{HEADER},note\n\n,,,,\n"Two\nlines",9 ft,4X,nylon,"a, b"\n\n{LEVEL}'
    assert [(row.number, row.cells["name"]) for row in rows(split)] == [
        (4, "Two\nlines"),
        (6, "Level"),
    ]


def test_a_header_may_say_columns_with_spaces() -> None:
    (row,) = rows(f"{HEADER},Butt end,fly-knot\n{LEVEL},none,clinch")
    assert (row.cells["butt_end"], row.cells["fly_knot"]) == ("none", "clinch")


def test_what_stands_beyond_the_header_is_kept_for_a_fault() -> None:
    (row,) = rows(f"{HEADER}\n{LEVEL},,low, clear,")
    assert row.beyond == "low clear"


def test_an_apostrophe_before_a_formula_is_taken_off() -> None:
    (row,) = rows(f"{HEADER}\n'=A1,9 ft,4X,nylon")
    assert row.cells["name"] == "=A1"


UNKNOWN = f"row 1: 'price' is no column; write one of: {', '.join(COLUMNS)}"


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        (" \n", ["this file is empty; write a table; `tagend table --columns` describes it"]),
        (f"{HEADER},price\n{LEVEL},9", [UNKNOWN]),
        (
            f"{HEADER},Line wieght\n{LEVEL},9",
            ["row 1: 'line_wieght' is no column; did you mean line_weight, line_tip or line_out?"],
        ),
        (
            f"{HEADER},name\n{LEVEL},Level",
            ["row 1: two columns are called 'name'; leave one out"],
        ),
        (
            "Level,9 ft\n",
            [
                UNKNOWN.replace("price", "level"),
                UNKNOWN.replace("price", "9_ft"),
                *(
                    f"row 1: no column is called {column!r}; begin with the columns' names"
                    for column in CELLS
                ),
            ],
        ),
        (
            f'{HEADER}\n{LEVEL}\n"Low,9 ft,4X,nylon\n{LEVEL}\n',
            ['row 3: a quotation mark has no partner; write one inside of a cell as two: ""'],
        ),
    ],
)
def test_a_table_that_cannot_be_taken_apart_is_refused(text: str, faults: list[str]) -> None:
    with pytest.raises(Refused) as refusal:
        rows(text)
    assert str(refusal.value).splitlines() == faults


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (
            f"{HEADER}\n{LEVEL}".encode("utf-16"),
            "this is not in UTF-8; save the table as CSV in UTF-8",
        ),
        ("Töne".encode("latin-1"), "this is not in UTF-8; save the table as CSV in UTF-8"),
        (b"," * (LARGEST + 1), "this file is too large; give a table of at most 10 MB"),
    ],
)
def test_what_is_no_table_is_refused(data: bytes, fault: str) -> None:
    with pytest.raises(Refused) as refusal:
        csv_rows(data)
    assert str(refusal.value) == fault
