from typing import get_args

import pytest
from cfractions import Fraction

from tagend.cards.practice.rules import Standing, common_rules, parse_limit, with_settings
from tagend.layouts.base.faults import Refused

RULES = common_rules()


def refusal(settings: dict[str, object]) -> list[str]:
    with pytest.raises(Refused) as caught:
        with_settings(RULES, settings)
    return str(caught.value).splitlines()


def test_every_rule_says_its_standing_and_source() -> None:
    for rule in RULES.values():
        assert rule.severity in ("error", "warning", "note")
        assert rule.standing in get_args(Standing)
        assert rule.source


@pytest.mark.parametrize(
    ("written", "limits"),
    [
        ("0.004 in", (Fraction("0.1016"),)),
        ("15 in", (Fraction(381),)),
        ("1/2 in", (Fraction("12.7"),)),
        (["1 in", "2 in"], (Fraction("25.4"), Fraction("50.8"))),
        ([1, 2, 8], (Fraction(1), Fraction(2), Fraction(8))),
        (1.5, (Fraction(3, 2),)),
        ([0.5, 0.8], (Fraction(1, 2), Fraction(4, 5))),
        (None, ()),
    ],
)
def test_a_limit_is_exact(written: object, limits: tuple[Fraction, ...]) -> None:
    assert parse_limit(written).figures == limits


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ([0.8, 0.5], "these do not grow; write two plain numbers, the lower first: [0.5, 0.8]"),
        ([1, 3, 2], "these do not grow; write plain numbers, the lowest first: [1, 2, 3]"),
        (
            ["2 ft", "1 in"],
            'these do not grow; write two with their units, the smaller first: ["4 ft", "20 ft"]',
        ),
        (0, "0 is no likely limit; write a plain number, such as 1.45"),
        (True, "True is no likely limit; write a plain number, such as 1.45"),
        (float("inf"), "inf is no likely limit; write a plain number, such as 1.45"),
    ],
)
def test_a_broken_limit_is_refused(written: object, message: str) -> None:
    with pytest.raises(Refused) as caught:
        parse_limit(written)
    assert str(caught.value) == message


def test_a_setting_changes_severity_and_limit_and_nothing_else() -> None:
    changed = with_settings(RULES, {"shock tippet": {"severity": "note", "limit": "10 in"}})
    assert changed["shock tippet"].severity == "note"
    assert changed["shock tippet"].limits == (Fraction(254),)
    assert changed["shock tippet"].source == RULES["shock tippet"].source
    assert {name: rule for name, rule in changed.items() if name != "shock tippet"} == {
        name: rule for name, rule in RULES.items() if name != "shock tippet"
    }


def test_of_several_limits_a_person_sets_some_by_name_or_the_first() -> None:
    ratio, small, below = RULES["step"].limits
    first = with_settings(RULES, {"step": {"limit": 1.3}})["step"].limits
    assert first == (Fraction("1.3"), small, below)
    named = with_settings(RULES, {"step": {"limit": {"below": "0.2 mm"}}})["step"].limits
    assert named == (ratio, small, Fraction("0.2"))
    assert refusal({"step": {"limit": {"smal": "1 thou", "small": 1}}}) == [
        "step, limit: no limit is called 'smal'; they are: ratio, small, below"
    ]
    assert refusal({"step": {"limit": {"small": 1}}})[0].startswith("step, limit, small: 1 is of")


def test_a_rule_may_be_turned_off() -> None:
    assert with_settings(RULES, {"rise": {"severity": "off"}})["rise"].severity == "off"


def test_a_limit_of_another_kind_is_refused() -> None:
    assert refusal({"class tippet": {"limit": 0.004}}) == [
        'class tippet, limit: 0.004 is of another kind; write it with its unit, such as "15 in"'
    ]
    assert refusal({"step": {"limit": "0.004 in"}}) == [
        "step, limit: '0.004 in' is of another kind; write a plain number, such as 1.45"
    ]
    assert refusal({"butt and line": {"limit": 0.6}}) == [
        "butt and line, limit: 0.6 is of another kind; "
        "write two plain numbers, the lower first: [0.5, 0.8]"
    ]
    assert refusal({"rise": {"limit": "1 thou"}}) == [
        "rise, limit: '1 thou' is of another kind; "
        "this rule compares with nothing: leave the limit out"
    ]


def test_all_broken_settings_are_told() -> None:
    assert refusal(
        {
            "steep": {"limit": "1 thou"},
            "rise": {"severity": "fatal"},
            "step": "0.003 in",
            "weak section": {"limits": 3},
        }
    ) == [
        f"steep: no rule is called so; the rules are: {', '.join(RULES)}",
        "rise, severity: 'fatal' is not known; write one of: 'error', 'warning', 'note' or 'off'",
        "step: this is not a table; write its keys under a heading in brackets",
        "weak section: no key is called 'limits'; did you mean limit?",
    ]
