"""The audit's rules as data: the rules file and a person's own settings in, rules out."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Literal, cast, get_args

from tagend.cards.base.file_schema import ANY, TableReader, choice, table
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.units import parse_diameter, parse_length
from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused, under

Severity = Literal["error", "warning", "note", "off"]
Limits = tuple[Fraction, ...]

_WRITE = {
    "none": "this rule compares with nothing: leave the limit out",
    "measure": 'write it with its unit, such as "0.004 in"',
    "number": "write a plain number, such as 1.5",
    "range": "write two plain numbers, the lower first: [0.5, 0.8]",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule; `limits` are mm where the rules file gives a unit, plain numbers where not."""

    name: str
    severity: Severity
    limits: Limits
    limit_kind: str  # a key of `_WRITE`
    reason: str
    standing: str
    source: str


@dataclass(frozen=True, slots=True)
class Setting:
    """What a person sets of a rule."""

    severity: Severity | None = None
    limit: object = None


def parse_limits(value: object) -> Limits:
    """Read `"0.004 in"`, `"15 in"`, `1.5` or `[0.5, 0.8]`; raises `Refused`."""
    match value:
        case None:
            return ()
        case list():
            limits = tuple(_number(part, "range") for part in value)
            if len(limits) != 2 or limits[0] >= limits[1]:
                raise refused("this is not a range", _WRITE["range"])
            return limits
        case str():
            return (_measure(value),)
    return (_number(value, "number"),)


def _limit_kind(value: object) -> str:
    kinds = {type(None): "none", list: "range", str: "measure"}
    return kinds.get(type(value), "number")


def _measure(value: str) -> Fraction:
    try:
        return parse_diameter(value).mm
    except Refused:
        return parse_length(value).mm


def _number(value: object, kind: str) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 < value < 1e6:
        raise refused(f"{value!r} is no likely limit", _WRITE[kind])
    return Fraction(str(value))


_read_setting: TableReader[Setting] = TableReader(
    table(Setting, {"severity": choice(*get_args(Severity)), "limit": ANY})
)


def with_settings(rules: Mapping[str, Rule], settings: Mapping[str, object]) -> dict[str, Rule]:
    """Return the rules with a person's limits and severities.

    Raises `Refused` with every rule that is not known and every limit of another kind.
    """
    changed = dict(rules)
    faults: list[Fault] = []
    for name, raw in settings.items():
        with noting(faults), under(name):
            changed[name] = _changed(rules, name, raw)
    refuse_any(faults)
    return changed


def _changed(rules: Mapping[str, Rule], name: str, raw: object) -> Rule:
    rule = rules.get(name)
    if rule is None:
        raise refused("no rule is called so", f"the rules are: {', '.join(rules)}")
    setting = _read_setting(raw)
    rule = replace(rule, severity=setting.severity or rule.severity)
    if setting.limit is None:
        return rule
    with under("limit"):
        if _limit_kind(setting.limit) != rule.limit_kind:
            raise refused(f"{setting.limit!r:.40} is of another kind", _WRITE[rule.limit_kind])
        return replace(rule, limits=parse_limits(setting.limit))


@cache
def common_rules() -> Mapping[str, Rule]:
    """Return the rules of the rules file, by name."""
    tables = cast(Mapping[str, dict[str, str]], read_our_file("practice/rules.toml"))
    return {name: _rule(name, **row) for name, row in tables.items()}


def _rule(name: str, severity: str, limit: object = None, **told: str) -> Rule:
    return Rule(
        name=name,
        severity=cast(Severity, severity),
        limits=parse_limits(limit),
        limit_kind=_limit_kind(limit),
        **told,
    )
