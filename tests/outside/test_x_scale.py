"""The X scale: thousandths of an inch = 11 - X, from 0X to 8X.

B. Byrd, "The X marks the knot!", club newsletter, May 2006 (.011 = 0X to .003 = 8X). The usual
millimetres: "X-stripes", thelimpcobra.com, 2011; 8X from common practice, no source.
"""

import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_diameter
from tagend.layouts.base.faults import Refused

TABLE = [
    # X, thousandths, exact mm, mm as usually printed
    ("0X", 11, "0.2794", "0.28"),
    ("1X", 10, "0.2540", "0.25"),
    ("2X", 9, "0.2286", "0.23"),
    ("3X", 8, "0.2032", "0.20"),
    ("4X", 7, "0.1778", "0.18"),
    ("5X", 6, "0.1524", "0.15"),
    ("6X", 5, "0.1270", "0.13"),
    ("7X", 4, "0.1016", "0.10"),
    ("8X", 3, "0.0762", "0.08"),
]


@pytest.mark.parametrize(("x", "thou", "exact", "printed"), TABLE)
def test_an_x_size_is_eleven_less_x_thousandths(
    x: str, thou: int, exact: str, printed: str
) -> None:
    diameter = parse_diameter(x)
    assert diameter.thou == thou
    assert diameter.mm == Fraction(exact)
    assert f"{float(diameter.mm):.2f}" == printed


def test_half_sizes_lie_half_way() -> None:
    # Half sizes exist, 2.5X = .0085: common practice in print.
    assert parse_diameter("2.5X").thou == Fraction("8.5")


@pytest.mark.parametrize("x", ["9X", "10X", "11X"])
def test_the_rule_runs_out_below_8x(x: str) -> None:
    # By the rule 11X would be no line at all.
    with pytest.raises(Refused):
        parse_diameter(x)


@pytest.mark.parametrize("x", ["01X", "02X", "03X", "-1X", "-2X"])
def test_sizes_above_0x_are_written_in_ways_that_do_not_agree(x: str) -> None:
    # 01X is .012 to some and .0122 to others; others write -1X. Common practice in print.
    with pytest.raises(Refused, match="above 0X the trade writes two ways"):
        parse_diameter(x)
