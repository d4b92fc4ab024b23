import csv
from datetime import date
from io import StringIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import parse_strength
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.tables.columns import COLUMNS
from tagend.cards.tables.grid import MOST_ROWS
from tagend.cards.tables.read_recipes import read_table
from tagend.cards.tables.write_recipes import csv_table
from tagend.layouts.base.faults import Refused
from tests.plausible import plausible_recipes
from tests.strategies import recipes
from tests.written import PRACTICE, recipe, section

FULL = replace(
    recipe(
        section(
            "22 to 28 in",
            "0.023 in",
            "hard nylon",
            "25 lb",
            knot="blood",
            part="butt",
            dropper="6 in",
            tapers_to="0.020 in",
            bought=True,
        ),
        section("9' 6\"", "4X"),
        butt="perfection loop",
        loop="3/4 in",
        fly="none",
        lengths="cut",
        total="11 ft",
        line_tip="0.9 mm",
        record_lengths=True,
        reach=("30 ft", "9 ft"),
    ),
    name="=Level, stiff",
    use="Crabs",
    line_weight=8,
    note="Ä",
    tied=date(2026, 5, 31),
    class_=parse_strength("6 kg"),
)


def cells(data: bytes) -> list[list[str]]:
    """Read with the csv module alone, as any spreadsheet would."""
    return list(csv.reader(StringIO(data.decode("utf-8-sig"), newline="")))


def test_a_table_has_a_row_a_section_and_the_leader_in_the_first() -> None:
    header, first, second = cells(csv_table([FULL]))
    assert header == list(COLUMNS)
    assert dict(zip(header, first, strict=True)) == {
        "name": "'=Level, stiff",
        "use": "Crabs",
        "line_weight": "8",
        "line_tip": "0.9 mm",
        "total": "11 ft",
        "lengths": "cut",
        "note": "Ä",
        "tied": "2026-05-31",
        "record_lengths": "yes",
        "class": "6 kg",
        "butt_end": "perfection loop",
        "butt_loop": "3/4 in",
        "fly_knot": "none",
        "line_out": "30 ft",
        "rod": "9 ft",
        "section": "1",
        "length": "22 to 28 in",
        "diameter": "0.023 in",
        "tapers_to": "0.020 in",
        "material": "hard nylon",
        "strength": "25 lb",
        "part": "butt",
        "knot": "blood",
        "dropper": "6 in",
        "bought": "yes",
    }
    assert [cell for cell in second if cell] == ["'=Level, stiff", "2", "9' 6\"", "4X", "nylon"]


def test_a_table_opens_in_any_spreadsheet() -> None:
    data = csv_table([FULL])
    assert data.startswith(b"\xef\xbb\xbfname,use,")
    assert data.count(b"\r\n") == data.count(b"\n") == 3


def test_a_full_recipe_comes_back() -> None:
    assert read_table(csv_table([FULL]), PRACTICE) == ((FULL,), ())


@given(st.lists(recipes, min_size=1, max_size=3))
@settings(max_examples=50, deadline=None)
def test_recipes_come_back_from_their_table(written: list[Recipe]) -> None:
    data = csv_table(written)
    assert read_table(data, PRACTICE) == (tuple(written), ())
    assert csv_table(written) == csv_table(read_table(data, PRACTICE).recipes)


@given(st.text("'=+-@x", min_size=1, max_size=6))
def test_no_cell_begins_as_a_formula(name: str) -> None:
    written = replace(FULL, name=name, use=name, note=name)
    data = csv_table([written])
    assert not any(cell.startswith(tuple("=+-@")) for row in cells(data) for cell in row)
    assert read_table(data, PRACTICE).recipes == (written,)


def test_neighbours_of_one_name_stay_apart() -> None:
    twice = (FULL, replace(FULL, note="again"))
    assert read_table(csv_table(twice), PRACTICE).recipes == twice


def test_a_shops_list_of_200_recipes_comes_back() -> None:
    shop = tuple(plausible_recipes(200))
    assert read_table(csv_table(shop), PRACTICE) == (shop, ())


def test_a_table_too_long_to_be_read_back_is_refused() -> None:
    leaders = [FULL] * (MOST_ROWS // len(FULL.sections))
    with pytest.raises(Refused) as caught:
        csv_table(leaders)
    assert "fewer leaders" in str(caught.value)
    assert len(cells(csv_table(leaders[1:]))) == 1 + len(leaders[1:]) * len(FULL.sections)
