import pytest

from tagend.cards.tables.quantity_cells import quantity


@pytest.mark.parametrize(
    ("cell", "kind", "unit", "said"),
    [
        ('24"', "length", "", '24"'),
        ("24", "length", "in", "24 in"),
        ("22-28", "length", "in", "22 to 28 in"),
        ("60 a 80", "length", "cm", "60 to 80 cm"),
        ("1-1/2", "length", "ft", "1-1/2 ft"),
        ("2 pies", "length", "", "2 ft"),
        ("60 cm", "length", "in", "60 cm"),
        ("25#", "strength", "", "25 lb"),
        ("25 libras", "strength", "", "25 lb"),
        ("25", "strength", "kg", "25 kg"),
        ("23", "diameter", "thou", "23 thou"),
        ("0,58", "diameter", "mm", "0.58 mm"),
        ("1X", "diameter", "in", "1X"),
    ],
)
def test_a_cell_says_what_a_recipe_file_would(cell: str, kind: str, unit: str, said: str) -> None:
    assert quantity(cell, kind, unit, False) == said


@pytest.mark.parametrize(
    ("cell", "said"), [(".023", ".023 in"), ("0.58", "0.58 mm"), ("23", "23 thou")]
)
def test_a_bare_diameter_shows_its_unit_by_its_size(cell: str, said: str) -> None:
    assert quantity(cell, "diameter", "", False) == said


def test_a_bare_diameter_that_may_be_an_x_size_keeps_none() -> None:
    assert quantity("5", "diameter", "", False) == "5"


def test_a_comma_that_may_part_thousands_stays_where_the_file_has_points() -> None:
    assert quantity("1,200 mm", "length", "", False) == "1,200 mm"
    assert quantity("1,200 m", "length", "", True) == "1.200 m"
