from typing import get_args

import pytest

from tagend.cards.words.cautions import When, cautions, cautions_for
from tagend.cards.words.language import ENGLISH
from tests.written import PRACTICE, leader, recipe, section

ALL = cautions(ENGLISH, *get_args(When))


def test_only_what_the_work_involves_is_cautioned_of() -> None:
    plain, wire = cautions(ENGLISH), cautions(ENGLISH, "wire")
    assert {caution.when for caution in plain} == {"always"}
    assert {caution.when for caution in wire} == {"always", "wire"}


def test_a_leader_with_wire_in_it_is_cautioned_of_wire() -> None:
    plain = leader(recipe(section("9 ft", "0.010 in"), section("2 ft", "0.009 in")))
    wire = leader(recipe(section("9 ft", "0.010 in"), section("6 in", "0.012 in", "wire")))
    materials = PRACTICE.materials
    assert cautions_for([plain], materials, ENGLISH) == cautions(ENGLISH, "fly")
    assert cautions_for([wire], materials, ENGLISH) == cautions(ENGLISH, "fly", "wire")
    assert cautions_for([plain, wire], materials, ENGLISH) == cautions(ENGLISH, "fly", "wire")


@pytest.mark.parametrize("when", get_args(When))
def test_every_occasion_has_a_caution(when: When) -> None:
    assert any(caution.when == when for caution in ALL)


def test_the_order_stays_and_an_eye_comes_first() -> None:
    assert "eye" in ALL[0].short
    wire = cautions(ENGLISH, "wire")
    assert [caution for caution in ALL if caution in wire] == list(wire)


def test_the_short_form_is_shorter() -> None:
    for caution in ALL:
        assert len(caution.short) <= len(caution.long)


def test_no_caution_promises_safety() -> None:
    words = " ".join(caution.short + caution.long for caution in ALL).lower()
    assert "safe" not in words
    assert "%" not in words
