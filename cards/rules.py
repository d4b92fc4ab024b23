"""The audit's rules as data: the rules file and a person's own settings in, rules out."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Literal, cast

from pydantic_core import SchemaValidator

from cards.errors import Refused, refused
from cards.file_schema import Schema, check, known_keys, optional, parsed, table
from cards.shelf import read_our_file
from cards.units import parse_diameter, parse_length

Severity = Literal["error", "warning", "note", "off"]
Limits = tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule; `limits` are mm where the rules file gives a unit, plain numbers where not."""

    name: str
    severity: Severity
    limits: Limits
    reason: str
    standing: str
    source: str


@dataclass(frozen=True, slots=True)
class Setting:
    """What a person sets of a rule."""

    severity: Severity | None = None
    limit: Limits | None = None


def parse_limits(value: object) -> Limits:
    """Read `"0.004 in"`, `"15 in"`, `1.5` or `[0.5, 0.8]`."""
    if isinstance(value, list) and len(value) == 2:
        low, high = (parse_limits(part)[0] for part in value)
        return (low, high)
    if isinstance(value, (int, float)) and not isinstance(value, bool) and 0 < value < 1e6:
        return (Fraction(str(value)),)
    try:
        return (parse_diameter(value).mm,)
    except Refused:
        return (parse_length(value).mm,)


SETTING: Schema = table(
    Setting,
    {
        "severity": optional({"type": "literal", "expected": ["error", "warning", "note", "off"]}),
        "limit": optional(parsed(parse_limits, "What to compare with.", ["0.004 in"])),
    },
)


def with_settings(rules: Mapping[str, Rule], settings: Mapping[str, object]) -> dict[str, Rule]:
    """Return the rules with a person's limits and severities.

    Raises `Refused` for a rule that is not known or a limit of another kind.
    """
    changed = dict(rules)
    for name, raw in settings.items():
        rule = rules.get(name)
        if rule is None:
            raise refused(f"no rule is called {name!r}", f"the rules are: {', '.join(rules)}")
        setting: Setting = check(SchemaValidator(SETTING), raw, None, known_keys(SETTING))
        limits = rule.limits if setting.limit is None else setting.limit
        if len(limits) != len(rule.limits):
            shape = {0: "no limit", 1: "one limit", 2: "a lowest and a highest limit"}
            raise refused(f"the rule {name!r} has {shape[len(rule.limits)]}", "write it so")
        changed[name] = replace(rule, severity=setting.severity or rule.severity, limits=limits)
    return changed


@cache
def common_rules() -> Mapping[str, Rule]:
    """Return the rules of the rules file, by name."""
    tables = cast(Mapping[str, Mapping[str, object]], read_our_file("rules.toml"))
    return {
        name: Rule(
            name=name,
            severity=cast(Severity, row["severity"]),
            limits=parse_limits(row["limit"]) if "limit" in row else (),
            reason=str(row["reason"]),
            standing=str(row["standing"]),
            source=str(row["source"]),
        )
        for name, row in tables.items()
    }
