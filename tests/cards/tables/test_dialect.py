import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.tables.dialect import as_meant, harmless

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
    ],
)
def test_only_what_looks_like_a_formula_takes_an_apostrophe(text: str, cell: str) -> None:
    assert harmless(text) == cell
    assert as_meant(cell) == text


@given(st.text() | st.text("'=+-@ a", max_size=5))
def test_no_cell_is_a_formula_and_every_text_comes_back(text: str) -> None:
    assert not harmless(text).startswith(FORMULA)
    assert as_meant(harmless(text)) == text
