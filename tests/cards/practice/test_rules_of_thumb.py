import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_diameter
from tagend.cards.practice.rules_of_thumb import rules_of_thumb
from tagend.cards.practice.shop_file import common_practice

THUMB = rules_of_thumb()


def test_a_heavier_line_has_a_stouter_butt() -> None:
    sizes = [row.diameter.mm for row in THUMB.butts]
    assert sizes == sorted(set(sizes))
    # rec.outdoors.fishing.fly, 17 December 2003; its only gap is 7.
    assert [row.diameter.thou for row in THUMB.butts] == [17, 19, 21, 23]
    assert not any("7" in row.line for row in THUMB.butts)


def test_a_butt_is_two_thirds_of_the_tip_that_it_suits() -> None:
    assert THUMB.tip_mm(parse_diameter("0.020 in")) == parse_diameter("0.030 in").mm


def test_no_butt_of_the_rule_is_one_that_the_audit_speaks_against() -> None:
    low, high = common_practice().rules["butt and line"].limits
    assert low < THUMB.butt_of_tip < high


@pytest.mark.parametrize(("hook", "stout", "fine"), [(12, "3", "4"), (8, "2", "8/3"), (16, 4, 5)])
def test_a_tippet_lies_between_the_two_printed_rules(hook: int, stout: str, fine: str) -> None:
    # A third and a quarter of the hook's size: missoulianangler.com has 12 with 4X, 8 with 2.67X.
    assert THUMB.tippet_x(hook) == (round(Fraction(stout)), round(Fraction(fine)))


@pytest.mark.parametrize("hook", THUMB.hooks)
def test_a_tippet_is_told_as_a_range_of_sizes_that_there_are(hook: int) -> None:
    stout, fine = THUMB.tippet_x(hook)
    assert 0 <= stout < fine <= 8
