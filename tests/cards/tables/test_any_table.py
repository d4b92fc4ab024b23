"""No table, however odd, does more than be refused."""

from contextlib import suppress

from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.tables.columns_file import NOTHING, Answers
from tagend.cards.tables.dialect import written_table
from tagend.cards.tables.read_recipes import read_table
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE

HEADINGS = st.sampled_from((
    "Leader", "Butt", "Mid 1", "Tippet", "length", "Length 2 (cm)", "dia", "lb", "L2", "#", "size",
    "Price", "total", "Material", "knot", "section", "tramo", "Notes", "in", "mm", "tied", "part",
))  # fmt: skip
ODD = ("24", '24" .023 25lb', "1/0", "2026-01-01", "nylon duro", "9" * 40, "٣ in", "=1+1", "Total")
CELLS = st.text(" 0123456789./-½¼\"'#xX@to,²", max_size=12) | st.sampled_from(ODD)
SAID = Answers(units={"length": "in", "diameter": "in", "strength": "lb"}, material="nylon")


@given(
    st.lists(HEADINGS, min_size=2, max_size=7, unique=True),
    st.lists(st.lists(CELLS, max_size=7), max_size=4),
    st.sampled_from([NOTHING, SAID]),
)
@settings(max_examples=200, deadline=None)
def test_any_table_is_read_or_refused(
    headings: list[str], rows: list[list[str]], answers: Answers
) -> None:
    data = written_table(headings, (dict(zip(headings, row, strict=False)) for row in rows))
    with suppress(Refused):
        recipes, faults = read_table(data, PRACTICE, answers)
        assert recipes or faults
