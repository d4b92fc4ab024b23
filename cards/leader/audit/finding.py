"""What a rule finds: a rule and a fact in, one finding out, to be said in any language."""

from collections.abc import Callable, Iterable

from msgspec import Struct

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.said import Said
from tagend.cards.practice.rules import Rule, Severity, Standing


class Fact(Struct, frozen=True):
    """A fact about one leader."""

    section: int | None  # from the butt, the first is 1; None for the whole leader
    says: Said
    severity: Severity | None = None  # where a rule is milder in one case
    reason: Said | None = None  # where the fact brings its own
    standing: Standing | None = None  # where the reason of the fact stands otherwise


Look = Callable[[Leader, Rule], Iterable[Fact]]


class Finding(Struct, frozen=True, kw_only=True):
    """One thing to heed in a recipe."""

    rule: str
    severity: Severity
    section: int | None
    says: Said
    reason: Said
    standing: Standing

    @classmethod
    def of(cls, rule: Rule, fact: Fact) -> "Finding":
        """Return the finding of a rule; a milder severity in the fact never makes it graver."""
        severity = rule.severity
        if fact.severity is not None and rule.severity != "note":
            severity = fact.severity
        return cls(
            rule=rule.name,
            severity=severity,
            section=fact.section,
            says=fact.says,
            reason=fact.reason or Said(rule.name),
            standing=fact.standing or rule.standing,
        )
