import pytest

from tagend.cards.tables.strand_cells import section_said
from tagend.layouts.base.faults import Refused

UNITS = {"length": "in", "strength": "lb"}


@pytest.mark.parametrize(
    ("cell", "said"),
    [
        ('24" .023 25lb', {"length": '24"', "diameter": ".023 in", "strength": "25 lb"}),
        ("24 x .023 x 25", {"length": "24 in", "diameter": ".023 in", "strength": "25 lb"}),
        ("2 ft @ .021", {"length": "2 ft", "diameter": ".021 in"}),
        (
            "36-.023 hard nylon",
            {"length": "36 in", "diameter": ".023 in", "material": "hard nylon"},
        ),
        (
            "20 to 24 in 4X fluoro",
            {"length": "20 to 24 in", "diameter": "4X", "material": "fluoro"},
        ),
        ("60 cm 0,58 mm", {"length": "60 cm", "diameter": "0.58 mm"}),
        ("7' 6\" .021", {"length": "7' 6\"", "diameter": ".021 in"}),
        ('15# 18" mono', {"length": '18"', "strength": "15 lb", "material": "mono"}),
    ],
)
def test_a_cell_is_taken_apart_in_whatever_order(cell: str, said: dict[str, str]) -> None:
    assert section_said(cell, UNITS, False) == said


@pytest.mark.parametrize("cell", ['24" .023 20"', "nylon", "25lb 20lb"])
def test_a_cell_that_says_no_section_is_refused(cell: str) -> None:
    with pytest.raises(Refused, match="such as"):
        section_said(cell, UNITS, False)
