import csv
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.tables.dialect import as_meant, harmless, written_rows

FORMULA = ("=", "+", "-", "@")  # what common spreadsheets take for the beginning of a formula


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=SUM(A1:A9)", "'=SUM(A1:A9)"),
        ("+1", "'+1"),
        ("-2 in wind", "'-2 in wind"),
        ("@home", "'@home"),
        ("'=quoted", "''=quoted"),
        ("'Tis plain", "'Tis plain"),
        ("1 + 1", "1 + 1"),
        ("", ""),
        ("-2", "-2"),
        ("stiff;=A1", "stiff;'=A1"),
        ("stiff,\t@home", "stiff,'\t'@home"),
        ("＝A1", "'＝A1"),  # as some spreadsheets of East Asia take it too
    ],
)
def test_only_what_looks_like_a_formula_takes_an_apostrophe(text: str, cell: str) -> None:
    assert harmless(text) == cell
    assert as_meant(cell) == text


@given(st.text() | st.text("'=+@ a;,\t\"", max_size=9))
def test_no_cell_is_a_formula_and_every_text_comes_back(text: str) -> None:
    assert not harmless(text).startswith(FORMULA)
    assert as_meant(harmless(text)) == text


@given(st.text('=+@ a;,\t"', max_size=9), st.sampled_from(",;\t"), st.sampled_from(",;\t"))
def test_no_cell_is_a_formula_whatever_a_spreadsheet_parts_them_by(
    text: str, written: str, read: str
) -> None:
    line = written_rows(["note"], [{"note": text}], written).decode()
    for row in csv.reader(StringIO(line, newline=""), delimiter=read):
        assert not any(cell.strip().startswith(FORMULA) for cell in row)
