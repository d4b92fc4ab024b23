"""What a rule finds: a rule and a fact in, one finding out."""

from typing import NamedTuple

from tagend.cards.practice.rules import Rule, Severity


class Found(NamedTuple):
    """A fact about one leader, in words."""

    section: int | None  # from the butt, the first is 1; None for the whole leader
    says: str
    severity: Severity | None = None  # where a rule is milder in one case
    reason: str | None = None  # where the fact brings its own


class Finding(NamedTuple):
    """One thing to heed in a recipe."""

    rule: str
    severity: Severity
    section: int | None
    says: str
    reason: str
    standing: str

    @classmethod
    def of(cls, rule: Rule, found: Found) -> "Finding":
        """Return the finding of a rule; a milder severity in the fact never makes it graver."""
        severity = rule.severity
        if found.severity is not None and rule.severity != "note":
            severity = found.severity
        reason = rule.reason if found.reason is None else found.reason
        return cls(rule.name, severity, found.section, found.says, reason, rule.standing)

    @property
    def message(self) -> str:
        """The fact and the reason in one sentence."""
        return f"{self.says}: {self.reason}"
