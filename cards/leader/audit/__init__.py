"""The taper audit: a leader worked out in, findings in plain words out."""

from tagend.cards.leader.audit.finding import Finding
from tagend.cards.leader.audit.knots import KNOT_RULES
from tagend.cards.leader.audit.lengths import LENGTH_RULES
from tagend.cards.leader.audit.records import RECORD_RULES
from tagend.cards.leader.audit.strengths import STRENGTH_RULES
from tagend.cards.leader.audit.taper import TAPER_RULES
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice

__all__ = ["Finding", "audit"]

RULES = {**TAPER_RULES, **KNOT_RULES, **LENGTH_RULES, **STRENGTH_RULES, **RECORD_RULES}
_ORDER = ("error", "warning", "note")


def audit(leader: Leader, practice: Practice) -> tuple[Finding, ...]:
    """Return what the rules find, the gravest first and then from the butt to the fly."""
    findings = [
        Finding.of(practice.rules[name], fact)
        for name, look in RULES.items()
        if practice.rules[name].severity != "off"
        for fact in look(leader, practice.rules[name])
    ]
    return tuple(sorted(findings, key=lambda f: (_ORDER.index(f.severity), f.section or 0)))
