from fractions import Fraction

import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.practice.rules import common_rules, parse_limits, with_settings
from tagend.layouts.base.faults import Refused

RULES = common_rules()


def refusal(settings: dict[str, object]) -> list[str]:
    with pytest.raises(Refused) as caught:
        with_settings(RULES, settings)
    return str(caught.value).splitlines()


def test_every_rule_says_its_standing_and_source() -> None:
    for rule in RULES.values():
        assert rule.severity in ("error", "warning", "note")
        assert rule.standing in ("published", "common practice")
        assert rule.source


@pytest.mark.parametrize(
    ("written", "limits"),
    [
        ("0.004 in", (Fraction("0.1016"),)),
        ("15 in", (Fraction(381),)),
        ("1/2 in", (Fraction("12.7"),)),
        (1.5, (Fraction(3, 2),)),
        ([0.5, 0.8], (Fraction(1, 2), Fraction(4, 5))),
        (None, ()),
    ],
)
def test_a_limit_is_exact(written: object, limits: tuple[Fraction, ...]) -> None:
    assert parse_limits(written) == limits


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ([0.8, 0.5], "this is not a range; write two plain numbers, the lower first: [0.5, 0.8]"),
        ([0.5], "this is not a range; write two plain numbers, the lower first: [0.5, 0.8]"),
        (
            ["1 in", "2 in"],
            "'1 in' is no likely limit; write two plain numbers, the lower first: [0.5, 0.8]",
        ),
        (0, "0 is no likely limit; write a plain number, such as 1.5"),
        (True, "True is no likely limit; write a plain number, such as 1.5"),
        (float("inf"), "inf is no likely limit; write a plain number, such as 1.5"),
    ],
)
def test_a_broken_limit_is_refused(written: object, message: str) -> None:
    with pytest.raises(Refused) as caught:
        parse_limits(written)
    assert str(caught.value) == message


def test_a_setting_changes_severity_and_limit_and_nothing_else() -> None:
    changed = with_settings(RULES, {"step": {"severity": "note", "limit": "2 thou"}})
    assert changed["step"].severity == "note"
    assert changed["step"].limits == (parse_diameter("2 thou").mm,)
    assert changed["step"].reason == RULES["step"].reason
    assert {name: rule for name, rule in changed.items() if name != "step"} == {
        name: rule for name, rule in RULES.items() if name != "step"
    }


def test_a_rule_may_be_turned_off() -> None:
    assert with_settings(RULES, {"rise": {"severity": "off"}})["rise"].severity == "off"


def test_a_limit_of_another_kind_is_refused() -> None:
    assert refusal({"step": {"limit": 0.004}}) == [
        'step, limit: 0.004 is of another kind; write it with its unit, such as "0.004 in"'
    ]
    assert refusal({"diameter ratio": {"limit": "0.004 in"}}) == [
        "diameter ratio, limit: '0.004 in' is of another kind; write a plain number, such as 1.5"
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
