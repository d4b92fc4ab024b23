import pytest
from cfractions import Fraction

from tagend.cards.base.shown_lengths import inches
from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.suitability import Meeting, disputed, unfit, untieable
from tests.told import in_english
from tests.written import PRACTICE, practice

KNOTS = PRACTICE.knots

UNLIKE = (
    "nylon and fluorocarbon draw up unlike, and fluorocarbon can cut into softer nylon; "
    "print disagrees"
)
NOT_STRANDED = "it does not hold on stranded wire"
NOT_BRAID = "it does not hold on braided or furled thread, which brings its own loop or ring"


def meeting(upper: str, lower: str) -> Meeting:
    """Return the meeting of two strands, each written `0.013 in nylon`."""
    strands = []
    for strand in (upper, lower):
        number, unit, material = strand.split(" ", 2)
        strands.append((PRACTICE.materials.find(material), parse_diameter(f"{number} {unit}").mm))
    (above, above_mm), (below, below_mm) = strands
    return Meeting(upper=above, upper_mm=above_mm, lower=below, lower_mm=below_mm)


def test_a_step_down_is_positive_and_a_rise_negative() -> None:
    down = meeting("0.013 in nylon", "0.011 in nylon")
    assert down.step_mm == parse_diameter("2 thou").mm
    assert meeting("0.011 in nylon", "0.013 in nylon").step_mm == -down.step_mm


@pytest.mark.parametrize(
    ("knot", "upper", "lower", "reason"),
    [
        ("blood", "0.013 in nylon", "0.012 in wire", "it does not hold on single-strand wire"),
        ("blood", "0.013 in nylon", "0.012 in 7-strand wire", "it does not hold on stranded wire"),
        ("ring joint", "0.012 in wire", "0.012 in wire", None),
        (
            "albright",
            "0.012 in wire",
            "0.012 in coated wire",
            "wire does not wind, and one strand of it must: use a swivel",
        ),
        ("haywire twist", "0.012 in stranded wire", "0.012 in stranded wire", NOT_STRANDED),
        ("perfection loop", "0.040 in braided thread", "0.040 in braided thread", NOT_BRAID),
        ("albright", "0.040 in furled thread", "0.012 in nylon", NOT_BRAID),
        ("loop to loop", "0.040 in furled thread", "0.012 in nylon", None),
        ("haywire twist", "0.012 in nylon", "0.012 in nylon", "it is for wire alone"),
        ("haywire twist", "0.012 in wire", "0.012 in wire", None),
        ("albright", "0.013 in nylon", "0.012 in wire", None),
        ("blood", "0.030 in nylon", "0.003 in fluorocarbon", None),
    ],
)
def test_only_some_knots_hold_on_wire_and_thread(
    knot: str, upper: str, lower: str, reason: str | None
) -> None:
    assert in_english(untieable(KNOTS.find(knot), meeting(upper, lower))) == (reason or "")


@pytest.mark.parametrize(
    ("knot", "upper", "lower", "reason"),
    [
        ("blood", "0.013 in nylon", "0.011 in nylon", None),
        ("blood", "0.011 in nylon", "0.013 in nylon", None),
        ("blood", "0.013 in nylon", "0.013 in copolymer", None),
        ("blood", "0.013 in nylon", "0.012 in fluorocarbon", UNLIKE),
        ("blood", "0.013 in fluorocarbon", "0.012 in copolymer", UNLIKE),
        ("blood", "0.013 in hard nylon", "0.012 in fluorocarbon", UNLIKE),
        ("triple surgeon's", "0.013 in nylon", "0.011 in fluorocarbon", None),
        ("blood", "0.030 in nylon", "0.010 in nylon", None),  # of the step another rule speaks
        (
            "triple surgeon's",
            "0.010 in nylon",
            "0.022 in nylon",
            "it joins strands up to 2 times as thick, and this is 2.20 times",
        ),
        (
            "triple surgeon's",
            "0.032 in hard nylon",
            "0.028 in hard nylon",
            "it draws up on strands up to 0.024 in, and this is 0.032 in",
        ),
        ("doubled blood", "0.028 in nylon", "0.010 in nylon", None),
        (
            "improved clinch",
            "0.020 in nylon",
            "0.020 in nylon",
            "it draws up on strands up to 0.015 in, and this is 0.020 in",
        ),
        ("improved clinch", "0.015 in nylon", "0.015 in nylon", None),
    ],
)
def test_practice_speaks_against_some_meetings(
    knot: str, upper: str, lower: str, reason: str | None
) -> None:
    assert in_english(unfit(KNOTS.find(knot), meeting(upper, lower))) == (reason or "")


@pytest.mark.parametrize(
    ("upper", "lower", "above"),
    [
        ("0.021 in nylon", "0.015 in wire", "light"),  # the soft line winds, thick as it is
        ("0.015 in coated wire", "0.021 in nylon", "heavy"),
        ("0.013 in nylon", "0.010 in nylon", "heavy"),
        ("0.010 in nylon", "0.013 in nylon", "light"),
        ("0.010 in nylon", "0.010 in fluorocarbon", "heavy"),
    ],
)
def test_wire_takes_the_heavy_side_and_else_the_thicker_strand(
    upper: str, lower: str, above: str
) -> None:
    sides = meeting(upper, lower).sides
    assert sides[0] == above
    assert {*sides} == {"heavy", "light"}


def test_a_strand_in_printed_millimetres_is_as_thick_as_its_inches() -> None:
    # 0.020 in are printed as 0.51 mm, a little more than their 0.508.
    knot = practice('[knots.clinch]\nthickest = "0.020 in"\n').knots.find("clinch")
    assert unfit(knot, meeting("0.51 mm nylon", "0.51 mm nylon")) is None
    assert unfit(knot, meeting("0.52 mm nylon", "0.52 mm nylon")) is not None


def test_the_thicker_of_two_strands_is_what_a_knot_must_draw_up_on() -> None:
    knot = practice('[knots."uni to uni"]\nthickest = "0.015 in"\n').knots.find("uni to uni")
    assert unfit(knot, meeting("0.017 in nylon", "0.015 in nylon")) is not None
    assert unfit(knot, meeting("0.015 in nylon", "0.017 in nylon")) is not None


@pytest.mark.parametrize(
    ("upper", "lower", "knot", "expected"),
    [
        ("0.013 in hard nylon", "0.012 in fluorocarbon", "blood", True),
        ("0.012 in fluorocarbon", "0.013 in hard nylon", "blood", True),
        ("0.33 mm hard nylon", "0.30 mm fluorocarbon", "blood", True),  # 13 and 12 thousandths
        ("0.33 mm hard nylon", "0.29 mm fluorocarbon", "blood", False),
        ("0.013 in hard nylon", "0.010 in fluorocarbon", "blood", False),
        ("0.013 in nylon", "0.012 in fluorocarbon", "blood", False),
        ("0.013 in hard nylon", "0.012 in hard nylon", "blood", False),
        ("0.013 in hard nylon", "0.012 in fluorocarbon", "triple surgeon's", False),
    ],
)
def test_print_disagrees_on_a_blood_knot_from_hard_nylon_to_fluorocarbon_of_like_size(
    upper: str, lower: str, knot: str, expected: bool
) -> None:
    assert disputed(KNOTS.find(knot), meeting(upper, lower)) is expected


@pytest.mark.parametrize(
    ("thou", "words"),
    [
        ("23", "0.023 in"),
        ("20", "0.020 in"),
        ("100", "0.100 in"),
        ("118.1", "0.1181 in"),
        ("8.5", "0.0085 in"),
        ("0.5", "0.0005 in"),
        ("12.99", "0.013 in"),
        ("0", "0.000 in"),
    ],
)
def test_a_diameter_is_said_in_inches_to_a_tenth_of_a_thousandth(thou: str, words: str) -> None:
    assert inches(Fraction(thou) * Fraction("0.0254")) == words
