import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.leader.suitability import Meeting
from tagend.cards.propose.step_limit import StepLimit
from tests.written import PRACTICE

THOU = DIAMETER_MM["thou"]
LIMITS = PRACTICE.rules["step"].limits
NYLON = PRACTICE.materials.find("nylon")


def allows(limit: StepLimit, upper: int, lower: int) -> bool:
    return limit.allows(Meeting(NYLON, upper * THOU, NYLON, lower * THOU))


@pytest.mark.parametrize(("upper", "lower", "may"), [(14, 10, True), (15, 10, False), (6, 4, True)])
def test_the_limit_is_the_audits_ratio(upper: int, lower: int, may: bool) -> None:
    # 1.45 times at the most, but a step of 2 thousandths below 9 is never big.
    assert allows(StepLimit(LIMITS), upper, lower) == may
    assert allows(StepLimit(LIMITS), lower, upper) == may


def test_a_persons_own_step_stands_instead() -> None:
    own = StepLimit(LIMITS, 5 * THOU)
    assert allows(own, 15, 10)
    assert not allows(own, 6, 20)


@given(st.integers(10, 40), st.integers(3, 9), st.sampled_from([None, 3, 7]))
def test_the_knots_are_the_fewest_of_their_size(thick: int, thin: int, step: int | None) -> None:
    limit = StepLimit(LIMITS, None if step is None else step * THOU)
    knots = limit.knots(thick * THOU, thin * THOU)

    def reaches(knots: int) -> bool:
        by_step = step is None or step * knots >= thick - thin
        return by_step and Fraction("1.45") ** knots * thin >= thick

    assert reaches(knots)
    assert not reaches(knots - 1)


def test_a_ratio_that_never_arrives_ends_the_count() -> None:
    assert StepLimit((Fraction(1), *LIMITS[1:])).knots(20 * THOU, 5 * THOU) > 20
