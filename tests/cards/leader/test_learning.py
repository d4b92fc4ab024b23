from collections.abc import Sequence
from fractions import Fraction

import pytest

from tagend.cards.base.units import parse_length
from tagend.cards.leader.learning import Learned, learn, written_key
from tagend.cards.practice.knots import Knot
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.written import PRACTICE

KNOTS = PRACTICE.knots


def learned(knot: str, before: Sequence[str], after: str) -> Learned:
    return learn(KNOTS.find(knot), [parse_length(text) for text in before], parse_length(after))


def refusal(knot: str, before: Sequence[str], after: str) -> str:
    with pytest.raises(Refused) as caught:
        learned(knot, before, after)
    return str(caught.value)


def test_a_joint_takes_of_two_pieces_half_from_each() -> None:
    found = learned("blood", ["12 in", "10 in"], "15 in")
    # 12 + 10 - 15 = 7 in, 3 1/2 in a side
    assert found.taken_mm == 7 * INCH_MM
    assert found.side_mm == Fraction(7, 2) * INCH_MM
    assert found.allowance == "3 1/2 in"
    assert found.sum == "12 in + 10 in - 15 in = 7 in, half for each side: 3 1/2 in"


def test_a_loop_or_fly_knot_takes_of_one() -> None:
    found = learned("perfection loop", ["20 in"], "13 1/4 in")
    assert found.allowance == "6 3/4 in"
    assert found.sum == "20 in - 13 1/4 in = 6 3/4 in"


def test_what_is_stored_is_rounded_up_to_a_mark_of_the_tape() -> None:
    # 12 + 10 - 15 1/16 = 6 15/16 in; half of it, 3 15/32 in, is 3 1/2 in on sixteenths
    assert learned("blood", ["12 in", "10 in"], "15 1/16 in").allowance == "3 1/2 in"
    # 12 + 10 - 14 7/8 = 7 1/8 in; half of it is 3 9/16 in, a mark of sixteenths and of no eighths
    assert learned("blood", ["12 in", "10 in"], "14 7/8 in").allowance == "3 9/16 in"
    # 300 + 250 - 381 = 169 mm; half of it, 84.5 mm, is 85 mm
    found = learned("blood", ["300 mm", "25 cm"], "381 mm")
    assert found.allowance == "85 mm"
    assert found.sum == "300 mm + 25 cm - 381 mm = 169 mm, half for each side: 85 mm"


def test_the_unit_measured_in_is_the_unit_stored() -> None:
    assert learned("clinch", ["10 in"], "18 cm").allowance.endswith(" mm")
    assert learned("clinch", ["25 cm"], "7 in").allowance.endswith(" in")


@pytest.mark.parametrize(
    ("knot", "before", "after", "message"),
    [
        (
            "blood",
            ["12 in"],
            "9 in",
            "'blood' is tied with 2 pieces of line; give both lengths with --from",
        ),
        (
            "clinch",
            ["12 in", "10 in"],
            "9 in",
            "'clinch' is tied with 1 piece of line; give its length with --from",
        ),
        (
            "blood",
            ["12 in", "10 in"],
            "22 in",
            "the line is no shorter than before; measure it again after tying",
        ),
        (
            "clinch",
            ["12 in"],
            "13 in",
            "the line is no shorter than before; measure it again after tying",
        ),
    ],
)
def test_lengths_that_cannot_be_are_refused(
    knot: str, before: list[str], after: str, message: str
) -> None:
    assert refusal(knot, before, after) == message


def _uneven() -> list[Knot]:
    return [knot for knot in KNOTS if knot.takes.heavy != knot.takes.light]


@pytest.mark.parametrize("knot", _uneven(), ids=[knot.name for knot in _uneven()])
def test_a_knot_whose_sides_differ_cannot_be_halved(knot: Knot) -> None:
    assert refusal(knot.name, ["12 in", "10 in"], "15 in") == (
        f"the two sides of {knot.name!r} take unlike lengths; "
        "mark each strand, and write thick and thin under [allowance] in the shop file"
    )


def test_a_key_written_by_another_name_of_the_knot_is_kept() -> None:
    blood = KNOTS.find("blood")
    assert written_key(blood, KNOTS, ["clinch", "Blood knot"]) == "Blood knot"
    assert written_key(blood, KNOTS, ["clinch"]) == "blood"
    assert written_key(blood, KNOTS, []) == "blood"
