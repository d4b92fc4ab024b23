"""What is typed in the fields of a leader's page, taken as a person means it."""

import pytest

from tagend.cards.base.units import parse_length
from tagend.cards.desk.draft import recipe_in, without_blank
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.layouts.base.faults import Refused

PRACTICE = practice_of(Shop())
ROW = {"length": "54", "diameter": ".021", "material": "nylon"}


@pytest.mark.parametrize(
    ("typed", "unit", "meant"),
    [
        ("9", "in", "9 ft"),
        ("7 1/2", "in", "7 1/2 ft"),
        ("108", "in", "108 in"),
        ("2.7", "cm", "2.7 m"),
    ],
)
def test_a_small_bare_number_for_the_whole_is_in_feet_or_metres(
    typed: str, unit: str, meant: str
) -> None:
    recipe = recipe_in({"head": {"name": "Low", "total": typed}, "rows": [ROW]}, PRACTICE, unit)
    assert recipe.total == parse_length(meant)


def test_an_empty_field_is_told_what_to_write_and_quotes_nothing() -> None:
    with pytest.raises(Refused) as refusal:
        recipe_in({"head": {"name": "Low"}, "rows": [{**ROW, "length": ""}]}, PRACTICE, "in")
    (fault,) = map(without_blank, refusal.value.faults)
    assert fault.found.startswith("write a length")
