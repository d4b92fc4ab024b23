import pytest

from tagend.cards.base.units import parse_diameter, parse_strength
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.propose.supplies import (
    Supply,
    butt_for_line,
    fullest,
    supplies_of_diameters,
    supplies_of_rack,
)
from tagend.cards.propose.wish import Shares, Tippet, read_shares, read_tippet
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.cards.propose.test_proposal import supply
from tests.written import PRACTICE


def test_shares_are_three_percentages_that_make_a_hundred() -> None:
    assert read_shares("60/20/20") == Shares(60, 20, 20)
    assert read_shares(" 50 / 25 / 25 ") == Shares(50, 25, 25)


@pytest.mark.parametrize("text", ["60/20", "60/20/21", "100/0/0", "60-20-20", "a/b/c", ""])
def test_other_shares_are_refused(text: str) -> None:
    with pytest.raises(Refused, match="write three percentages that make 100, such as 60/20/20"):
        read_shares(text)


def test_a_tippet_is_a_diameter_and_what_else_matters() -> None:
    size = parse_diameter("4X")
    assert read_tippet("4X", PRACTICE) == Tippet(size)
    assert read_tippet("4X fluoro", PRACTICE) == Tippet(size, "fluorocarbon")
    assert read_tippet("4X nylon 5 lb", PRACTICE) == Tippet(size, "nylon", parse_strength("5 lb"))


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("4X nylon 5 lb 20 in", "gives a length; leave it out: it follows from total and shares"),
        ("thin", "'thin'"),
        ("4X silk", "'silk'"),
    ],
)
def test_other_tippets_are_refused(text: str, fault: str) -> None:
    with pytest.raises(Refused, match=fault):
        read_tippet(text, PRACTICE)


def test_the_butt_is_the_strand_nearest_to_two_thirds_of_the_line() -> None:
    # Two thirds of 0.036 in are 0.024.
    rack = [supply(28), supply(23), supply(21)]
    assert butt_for_line(parse_diameter("0.036 in"), rack, PRACTICE).plain == "23 thou"


def test_a_line_that_no_strand_suits_is_told_what_would() -> None:
    # The audit allows half to four fifths: 0.020 to 0.032 of 0.040 in.
    with pytest.raises(Refused, match=r"buy one of about 0\.0267 in for the butt"):
        butt_for_line(parse_diameter("0.040 in"), [supply(19), supply(33)], PRACTICE)


def test_a_rack_is_all_its_spools() -> None:
    spools = "".join(
        f'[[spool]]\nlabel = "{name}"\nmaterial = "{name}"\ndiameter = "12 thou"\nleft = "9 m"\n'
        for name in ("wire", "copolymer")
    )
    found = supplies_of_rack(read_rack(spools.encode(), PRACTICE))
    assert [strand.label for strand in found] == ["wire", "copolymer"]
    assert {strand.left_mm for strand in found} == {9000}


def test_no_line_is_suited_by_wire() -> None:
    rack = [supply(24, "wire"), supply(21)]
    assert butt_for_line(parse_diameter("0.036 in"), rack, PRACTICE).plain == "21 thou"


def test_of_like_spools_the_fullest_counts() -> None:
    rack = [supply(13, left=40), supply(13, left=90), supply(13, "fluorocarbon", left=20)]
    printed = Supply("nylon", parse_diameter("0.33 mm"), None, "metric", 60 * INCH_MM)
    assert [strand.left_mm for strand in fullest([*rack, printed])] == [
        90 * INCH_MM,
        20 * INCH_MM,
    ]
    endless = supply(13)
    assert fullest([endless, *rack])[0] is endless


def test_diameters_are_all_of_one_material_but_for_the_tippet() -> None:
    sizes = [parse_diameter(size) for size in ("0.009 in", "0.007 in")]
    end = Tippet(parse_diameter("4X"), "fluorocarbon", parse_strength("5 lb"))
    above, tippet = supplies_of_diameters(sizes, "nylon", end)
    assert (above.material, above.strength) == ("nylon", None)
    assert (tippet.material, tippet.strength) == ("fluorocarbon", end.strength)
