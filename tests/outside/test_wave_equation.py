"""The measure's formula against the wave equation itself, solved by finite differences.

Pulses are shorter than the shortest section, so that no two joints act on one at the same time.
"""

import pytest

from tagend.cards.leader.waves import measure
from tests.ideal_string import Part, arriving, short_pulse, string_of
from tests.outside.test_published_leaders import LEADERS, written
from tests.written import SIX, leader

STRINGS = {each.number: leader(written(each)) for each in LEADERS if each.diameters}


@pytest.mark.parametrize("name", [*STRINGS, "six"])
def test_a_short_pulse_arrives_with_the_energy_that_the_formula_says(name: str) -> None:
    tied = STRINGS.get(name) or leader(SIX)
    passed = measure(tied).passed
    assert passed
    parts = string_of(tied)
    assert arriving(parts, short_pulse(parts)) == pytest.approx(passed.middle, rel=0.01)


def test_on_an_even_string_all_of_it_arrives() -> None:
    parts = [Part(500, 0.3), Part(500, 0.3)]
    assert arriving(parts, 100) == pytest.approx(1, abs=0.002)


def test_a_pulse_much_longer_than_the_leader_sees_one_step_only() -> None:
    # In any text on waves: a layer thin against the wave is as good as none. 1 - (1/3)^2, for
    # strings of which one is four times as heavy as the other.
    parts = [Part(50, 4.0), Part(5, 2.0), Part(50, 1.0)]
    assert arriving(parts, 500) == pytest.approx(8 / 9, abs=0.005)
