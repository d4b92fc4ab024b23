"""The audit's rules as data: the rules file and a person's own settings in, rules out."""

from collections.abc import Mapping
from functools import cache
from typing import Literal, cast, get_args

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import force_setattr, replace

from tagend.cards.base.file_schema import ANY, TableReader, choice, table
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.units import parse_diameter, parse_length
from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused, under

Severity = Literal["error", "warning", "note", "off"]
Standing = Literal[
    "published",
    "common practice",
    "our choice",
    "arithmetic",
    "computed, for an ideal string",
]
Limits = tuple[Fraction, ...]

PLAIN = "limit"  # what the only limit of a rule is called

_WRITE = {
    "none": "this rule compares with nothing: leave the limit out",
    "measure": 'write it with its unit, such as "15 in"',
    "number": "write a plain number, such as 1.45",
    "range": "write two plain numbers, the lower first: [0.5, 0.8]",
    "list": "write plain numbers, the lowest first: [1, 2, 3]",
    "measures": 'write two with their units, the smaller first: ["4 ft", "20 ft"]',
}


class Limit(Struct, frozen=True):
    """What a rule compares with: mm where the rules file gives a unit, plain numbers where not."""

    kind: str  # a key of `_WRITE`
    figures: Limits


class Rule(Struct, frozen=True, kw_only=True):
    """One rule, with its limits by name."""

    name: str
    severity: Severity
    limit: Mapping[str, Limit]
    standing: Standing
    source: str
    limits: Limits = ()  # all its figures, in the order of the rules file

    def __post_init__(self) -> None:
        figures = (figure for limit in self.limit.values() for figure in limit.figures)
        force_setattr(self, "limits", tuple(figures))


class Setting(Struct, frozen=True):
    """What a person sets of a rule."""

    severity: Severity | None = None
    limit: object = None


def parse_limit(value: object) -> Limit:
    """Read `"15 in"`, `1.45`, `[0.5, 0.8]`, `["4 ft", "20 ft"]` or `[1, 2, 3]`.

    Raises `Refused`.
    """
    kind = _kind(value)
    match value:
        case None:
            return Limit(kind, ())
        case list():
            figures = tuple(_figure(part, kind) for part in value)
            if list(figures) != sorted({*figures}):
                raise refused("these do not grow", _WRITE[kind])
            return Limit(kind, figures)
    return Limit(kind, (_figure(value, kind),))


def _kind(value: object) -> str:
    match value:
        case None:
            return "none"
        case str():
            return "measure"
        case [str(), _]:
            return "measures"
        case list():
            return "range" if len(value) == 2 else "list"
    return "number"


def _figure(value: object, kind: str) -> Fraction:
    if kind.startswith("measure"):
        return _measure(value)
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 < value < 1e6:
        raise refused(f"{value!r} is no likely limit", _WRITE[kind])
    return Fraction(str(value))


def _measure(value: object) -> Fraction:
    try:
        return parse_diameter(value).mm
    except Refused:
        return parse_length(value).mm


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
        return replace(rule, limit={**rule.limit, **_set_limits(rule, setting.limit)})


def _set_limits(rule: Rule, value: object) -> Mapping[str, Limit]:
    """Read the limits that a person names, or one without a name: the first of the rule."""
    if not isinstance(value, dict):
        first = next(iter(rule.limit))
        return {first: _like(rule.limit[first], value)}
    read = {}
    for name, each in value.items():
        if name not in rule.limit:
            raise refused(f"no limit is called {name!r}", f"they are: {', '.join(rule.limit)}")
        with under(name):
            read[name] = _like(rule.limit[name], each)
    return read


def _like(ours: Limit, value: object) -> Limit:
    if _kind(value) != ours.kind:
        raise refused(f"{value!r:.40} is of another kind", _WRITE[ours.kind])
    return parse_limit(value)


@cache
def common_rules() -> Mapping[str, Rule]:
    """Return the rules of the rules file, by name."""
    tables = cast(Mapping[str, dict[str, str]], read_our_file("practice/rules.toml"))
    return {name: _rule(name, **row) for name, row in tables.items()}


def _rule(name: str, severity: str, standing: str, source: str, limit: object = None) -> Rule:
    limits = limit if isinstance(limit, dict) else {PLAIN: limit}
    return Rule(
        name=name,
        severity=cast(Severity, severity),
        standing=cast(Standing, standing),
        limit={key: parse_limit(each) for key, each in limits.items()},
        source=source,
    )
