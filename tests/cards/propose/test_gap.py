from itertools import pairwise

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import DIAMETER_MM, parse_diameter, parse_strength
from tagend.cards.leader.steps import big, step_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.propose.gap import missing
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Tippet
from tagend.layouts.base.faults import Refused
from tests.cards.propose.test_proposal import LIMITS, supply, wish
from tests.written import PRACTICE

THOU = DIAMETER_MM["thou"]
NYLON = PRACTICE.materials.find("nylon")


def faults(asked: object, rack: list[Supply]) -> list[str]:
    with pytest.raises(Refused) as refusal:
        propose(asked, rack, PRACTICE, "Taper")  # type: ignore[arg-type]
    return str(refusal.value).splitlines()


def test_a_missing_butt_is_named_with_the_nearest_there_is() -> None:
    rack = [supply(18), supply(14), supply(10)]
    assert faults(wish(90, 20, 10), rack) == [
        "there is no 20 thou for the butt; "
        "buy a spool of it, or begin with 18 thou nylon (18 nylon)"
    ]


def test_a_missing_tippet_is_named_as_it_was_asked_for() -> None:
    end = Tippet(parse_diameter("4X"), "fluorocarbon", parse_strength("5 lb"))
    rack = [supply(11), supply(7), supply(7, "fluorocarbon")]
    assert faults(wish(90, 11, end), rack) == [
        "there is no 4X fluorocarbon 5 lb for the tippet; buy a spool of it"
    ]


def test_every_gap_is_named_with_what_would_bridge_it() -> None:
    rack = [supply(20), supply(13), supply(10), supply(4)]
    assert faults(wish(90, 20, 4, step=4), rack) == [
        "no strand leads from 20 thou nylon (20 nylon) to 13 thou nylon (13 nylon) in steps of "
        "0.004 in or less; buy 0.016 in nylon, or allow a larger step",
        "no strand leads from 10 thou nylon (10 nylon) to 4 thou nylon (4 nylon) in steps of "
        "0.004 in or less; buy 0.007 in nylon, or allow a larger step",
    ]


def test_a_gap_that_other_strands_go_round_is_none() -> None:
    # 19 nylon leads nowhere in steps of 3, but 20, 17, 14 do.
    rack = [supply(20), supply(17), supply(14), supply(11), supply(13, "fluorocarbon")]
    assert len(propose(wish(90, 20, 11, step=3), rack, PRACTICE, "Taper")) > 0


def test_a_spool_that_is_too_empty_is_named() -> None:
    # 90 in in 4 pieces: butt 32 and 22, taper 18, tippet 18.
    rack = [supply(19), supply(16, left=20), supply(13), supply(10)]
    (fault,) = faults(wish(90, 19, 10, step=3), rack)
    assert fault.startswith(
        "16 thou nylon (16 nylon) has line for a piece of 12 in beside its knots"
    )
    assert fault.endswith("and the best taper takes 22 in; buy a spool of it")


def test_a_leader_too_short_for_its_steps_is_told() -> None:
    rack = [supply(size) for size in range(10, 20)]
    assert faults(wish(30, 19, 10, step=2), rack) == [
        "30 in has no room for the pieces that steps of this size ask for; "
        "allow a larger step, or write a longer total"
    ]


def test_a_butt_no_thicker_than_the_tippet_is_refused() -> None:
    assert faults(wish(90, 10, 10), [supply(10)]) == [
        "a butt of 10 thou is no thicker than the tippet; write a thicker butt"
    ]


@given(st.integers(100, 300), st.integers(40, 99), st.integers(12, 90))
def test_the_missing_strands_bridge_the_gap(above: int, below: int, step: int) -> None:
    high, low, most = (Fraction(tenths, 10) * THOU for tenths in (above, below, step))
    sizes = missing(high, low, StepLimit(LIMITS, most), NYLON, THOU)
    assert all(size % THOU == 0 for size in sizes)
    assert all(0 <= a - b <= most for a, b in pairwise([high, *sizes, low]))
    assert len(sizes) >= -(-(high - low) // most) - 1


@given(st.integers(12, 30), st.integers(3, 11))
def test_strands_for_the_usual_limit_are_no_big_steps(above: int, below: int) -> None:
    sizes = missing(above * THOU, below * THOU, StepLimit(LIMITS), NYLON, THOU)
    for a, b in pairwise([above * THOU, *sizes, below * THOU]):
        assert a > b
        assert not big(step_of(Meeting(NYLON, a, NYLON, b)), LIMITS)


def test_what_is_bought_makes_the_taper_fit() -> None:
    rack = [supply(20), supply(10, left=60)]
    asked = wish(90, 20, 10, step=4)
    bought = missing(20 * THOU, 10 * THOU, asked.step, NYLON, THOU)
    more = [supply(int(size / THOU)) for size in bought]
    assert len(propose(asked, [*rack, *more], PRACTICE, "Taper")[0].strands) == 2 + len(bought)
