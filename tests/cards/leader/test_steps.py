import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.steps import Step, big, step_of
from tagend.cards.leader.suitability import Meeting
from tests.written import PRACTICE, practice

LIMITS = PRACTICE.rules["step"].limits


def step(upper: str, lower: str, above: str = "nylon", below: str = "nylon") -> Step:
    find = PRACTICE.materials.find
    return step_of(
        Meeting(
            upper=find(above),
            upper_mm=parse_diameter(upper).mm,
            lower=find(below),
            lower_mm=parse_diameter(lower).mm,
        )
    )


def is_big(*strands: str) -> bool:
    return big(step(*strands), LIMITS)


@pytest.mark.parametrize(
    ("upper", "lower", "expected"),
    [
        ("0.021 in", "0.019 in", False),
        ("0.017 in", "0.013 in", False),  # 1.31
        ("0.013 in", "0.009 in", False),  # 1.444
        ("0.33 mm", "0.23 mm", False),  # the same as printed in mm
        ("0.016 in", "0.011 in", False),  # 1.4545, and 1.45 but for what print rounds off
        ("0.022 in", "0.015 in", True),  # 1.467
        ("0.020 in", "0.013 in", True),  # 1.54
        ("0.012 in", "0.008 in", True),  # 1.5
        ("0.009 in", "0.006 in", True),  # 1.5
    ],
)
def test_a_step_is_big_by_the_ratio_of_its_diameters_either_way(
    upper: str, lower: str, expected: bool
) -> None:
    assert is_big(upper, lower) is expected
    assert is_big(lower, upper) is expected


def test_two_thousandths_are_never_big_in_fine_strands() -> None:
    assert step("5X", "7X").times == pytest.approx((1.5, 1.5))
    for upper, lower in (("5X", "7X"), ("6X", "8X"), ("0.13 mm", "0.08 mm")):
        assert not is_big(upper, lower)
    assert is_big("5X", "8X")
    assert is_big("0.0086 in", "0.0055 in")
    # In thicker strands they are what their ratio says.
    strict = practice("[rules.step]\nlimit = 1.2\n").rules["step"].limits
    assert not big(step("0.0085 in", "0.0065 in"), strict)
    assert big(step("0.009 in", "0.007 in"), strict)


def test_unlike_materials_are_big_only_whatever_their_moduli_are() -> None:
    # Nylon of 2.0 to 3.5 and fluorocarbon of 2.1 to 4.0 GPa: the root of the root of 2.0 / 4.0 is
    # 0.841, and of 3.5 / 2.1 1.136.
    like = step("0.010 in", "0.010 in", "nylon", "fluorocarbon")
    assert like.times == pytest.approx((0.841, 1.136), abs=0.001)
    assert not is_big("0.016 in", "0.010 in", "nylon", "fluorocarbon")  # 1.35 to 1.82
    assert is_big("0.018 in", "0.010 in", "nylon", "fluorocarbon")  # 1.51 to 2.05


def test_a_limp_strand_above_a_stiff_one_is_a_big_step_up() -> None:
    wired = step("0.015 in", "0.014 in", "nylon", "wire")
    assert big(wired, LIMITS)
    assert not wired.falls
    assert min(wired.times) > 1
    assert step("0.020 in", "0.013 in").falls


def test_where_a_modulus_is_not_known_it_drops_out() -> None:
    unknown = step("0.011 in", "0.010 in", "hard nylon", "fluorocarbon")
    assert unknown.times == pytest.approx((1.1, 1.1))
    one = step("0.011 in", "0.010 in", "hard nylon", "hard nylon")
    assert one.times == pytest.approx((1.1, 1.1))
