from fractions import Fraction

import pytest

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Spool
from tests.written import section


def spool(diameter: str, material: str = "nylon") -> Spool:
    return Spool("a", material, parse_diameter(diameter), parse_line_length("9 m"))


def test_a_section_and_its_spool_are_of_one_kind() -> None:
    assert Line.of(section("30 in", "0.015 in")) == Line.of(spool("15 thou"))
    assert Line.of(spool("0.38 mm")) == Line("nylon", Fraction("0.38"))


@pytest.mark.parametrize(
    ("held", "fits"),
    [
        (spool("0.38 mm"), True),  # 0.015 in are 0.381 mm
        (spool("0.39 mm"), True),  # 0.009 mm apart
        (spool("0.391 mm"), False),  # a hundredth of a mm apart
        (spool("0.40 mm"), False),
        (spool("0.015 in", "fluorocarbon"), False),
    ],
)
def test_inches_and_millimetres_that_print_alike_are_like(held: Spool, fits: bool) -> None:
    assert Line.of(section("30 in", "0.015 in")).is_of(held) is fits
