import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

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


@given(st.lists(st.integers(0, 60), min_size=1, max_size=20), st.integers(0, 60))
def test_alike_kinds_stand_in_a_row_of_a_sorted_list(thirds: list[int], other: int) -> None:
    # In thirds of a hundredth of a millimetre, so that some are a hundredth apart.
    kinds = sorted(
        Line(material, Fraction(at, 300)) for at in thirds for material in ("hard nylon", "nylon")
    )
    line = Line("nylon", Fraction(other, 300))
    alike = [
        at for at, (material, mm) in enumerate(kinds)
        if material == "nylon" and abs(mm - line.diameter_mm) < Fraction(1, 100)
    ]  # fmt: skip
    assert list(line.among(kinds)) == alike
