import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.passing import Percent, Spread, passing, turned_back
from tagend.cards.leader.steps import By, Step, beyond, big, step_of
from tagend.cards.leader.suitability import Meeting
from tests.written import PRACTICE, practice

LIMITS = PRACTICE.rules["step"].limits


def meeting(upper: str, lower: str, above: str = "nylon", below: str = "nylon") -> Meeting:
    find = PRACTICE.materials.find
    return Meeting(
        upper=find(above),
        upper_mm=parse_diameter(upper).mm,
        lower=find(below),
        lower_mm=parse_diameter(lower).mm,
    )


def step(*strands: str) -> Step:
    return step_of(meeting(*strands))


def known(*strands: str) -> dict[By, tuple[float, float]]:
    return {apart.by: (apart.low, apart.high) for apart in step(*strands).apart}


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
    assert known("5X", "7X")["thick"] == pytest.approx((1.5, 1.5))
    for upper, lower in (("5X", "7X"), ("6X", "8X"), ("0.13 mm", "0.08 mm")):
        assert not is_big(upper, lower)
    assert not is_big("5X", "7X", "fluorocarbon", "nylon")  # 1.8 times as heavy
    assert is_big("5X", "8X")
    assert is_big("0.0086 in", "0.0055 in")
    # In thicker strands they are what their ratio says.
    strict = practice("[rules.step]\nlimit = 1.2\n").rules["step"].limits
    assert not big(step("0.0085 in", "0.0065 in"), strict)
    assert big(step("0.009 in", "0.007 in"), strict)


def test_unlike_materials_part_by_weight_and_by_stiffness() -> None:
    # Densities near 1.14 and 1.78, of whose ratio the root is 0.800; nylon of 2.0 to 3.5 and
    # fluorocarbon of 2.1 to 4.0 GPa: the root of the root of 2.0 / 4.0 is 0.841, and of 3.5 / 2.1
    # 1.136.
    like = known("0.010 in", "0.010 in", "nylon", "fluorocarbon")
    assert like["heavy"] == pytest.approx((0.800, 0.800), abs=0.02)
    assert like["stiff"] == pytest.approx((0.841, 1.136), abs=0.001)


def test_the_wave_finds_no_step_where_a_denser_strand_is_thinner() -> None:
    # 1.214 times as thick, and the root of 1.14 / 1.78 as heavy for it: 0.97 times.
    strands = ("0.017 in", "0.014 in", "nylon", "fluorocarbon")
    assert not is_big(*strands)
    turned = turned_back(passing(meeting(*strands)))
    assert turned is not None
    assert turned.high < 0.03


@pytest.mark.parametrize(
    ("upper", "lower", "by"),
    [
        ("0.016 in nylon", "0.010 in fluorocarbon", None),  # 1.28 as heavy, 1.35 to 1.82 as stiff
        ("0.018 in nylon", "0.010 in fluorocarbon", "stiff"),  # 1.44, 1.51 to 2.05
        ("0.020 in nylon", "0.010 in fluorocarbon", "heavy"),  # 1.60
        ("0.011 in fluorocarbon", "0.010 in nylon", None),  # 1.37
        ("0.015 in fluorocarbon", "0.012 in nylon", "heavy"),  # 1.56, and 1.10 to 1.49 as stiff
    ],
)
def test_a_step_is_big_where_the_whole_of_either_range_is(
    upper: str, lower: str, by: By | None
) -> None:
    (d, inch, material), (d_below, _, material_below) = upper.split(), lower.split()
    found = beyond(step(f"{d} {inch}", f"{d_below} in", material, material_below), LIMITS)
    assert (found and found.by) == by


def test_a_light_strand_above_a_heavy_one_is_a_big_step_up() -> None:
    wired = beyond(step("0.015 in", "0.014 in", "nylon", "wire"), LIMITS)
    assert wired is not None
    assert not wired.falls
    assert min(wired.times) > 1
    level = beyond(step("0.020 in", "0.013 in"), LIMITS)
    assert level is not None
    assert level.falls


def test_what_is_not_known_is_left_out_and_the_diameters_stand_in_for_all() -> None:
    assert set(known("0.011 in", "0.010 in", "hard nylon", "fluorocarbon")) == {"heavy"}
    assert known("0.011 in", "0.010 in", "braided thread", "nylon") == {
        "thick": pytest.approx((1.1, 1.1))
    }


def test_what_turns_back_is_the_same_either_way() -> None:
    # 20 to 13: 7 / 33; French, Vibrations and Waves: r = (Z above - Z below) / (Z above + Z below).
    for strands in (("0.020 in", "0.013 in"), ("0.013 in", "0.020 in")):
        turned = turned_back(passing(meeting(*strands)))
        assert turned is not None
        assert str(Percent.of(turned)) == "21 %"
    assert turned_back(passing(meeting("0.013 in", "0.020 in", "nylon", "braided thread"))) is None
    assert str(Percent.of(Spread(0.176, 0.214))) == "18 to 21 %"
