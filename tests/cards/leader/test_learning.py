from collections.abc import Sequence

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


def test_a_joint_s_lap_is_what_it_takes_of_two_pieces() -> None:
    found = learned("blood", ["12 in", "10 in"], "15 in")
    assert found.taken_mm == 7 * INCH_MM
    assert found.lap == "7 in"
    assert found.sum == "12 in + 10 in - 15 in = 7 in, the lap"


def test_a_loop_or_fly_knot_takes_of_one() -> None:
    found = learned("perfection loop", ["20 in"], "13 1/4 in")
    assert found.lap == "6 3/4 in"
    assert found.sum == "20 in - 13 1/4 in = 6 3/4 in, the fold"


def test_what_is_stored_is_rounded_up_to_a_mark_of_the_tape() -> None:
    # 12 + 10 - 15 1/32 = 6 31/32 in, on sixteenths 7 in
    assert learned("blood", ["12 in", "10 in"], "15 1/32 in").lap == "7 in"
    assert learned("blood", ["12 in", "10 in"], "15 1/16 in").lap == "6 15/16 in"
    # 300 + 250 - 381.5 = 168.5 mm
    found = learned("blood", ["300 mm", "25 cm"], "381.5 mm")
    assert found.lap == "169 mm"
    assert found.sum == "300 mm + 25 cm - 381.5 mm = 169 mm, the lap"


def test_the_unit_measured_in_is_the_unit_stored() -> None:
    assert learned("clinch", ["10 in"], "18 cm").lap.endswith(" mm")
    assert learned("clinch", ["25 cm"], "7 in").lap.endswith(" in")


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


def _folded() -> list[Knot]:
    return [knot for knot in KNOTS if "joint" in knot.places and not knot.lapped]


@pytest.mark.parametrize("knot", _folded(), ids=[knot.name for knot in _folded()])
def test_a_joint_with_a_fold_on_each_side_has_no_lap(knot: Knot) -> None:
    assert "write { above = ..., below = ... }" in refusal(knot.name, ["12 in", "10 in"], "15 in")


def test_a_key_written_by_another_name_of_the_knot_is_kept() -> None:
    blood = KNOTS.find("blood")
    assert written_key(blood, KNOTS, ["clinch", "Blood knot"]) == "Blood knot"
    assert written_key(blood, KNOTS, ["clinch"]) == "blood"
    assert written_key(blood, KNOTS, []) == "blood"
