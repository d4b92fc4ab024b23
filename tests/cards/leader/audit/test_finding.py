import pytest

from tagend.cards.leader.audit.finding import Fact, Finding
from tagend.cards.leader.said import Said, said
from tagend.cards.practice.rules import Rule, Severity


def rule(severity: Severity) -> Rule:
    return Rule(
        name="rise",
        severity=severity,
        limit={},
        standing="common practice",
        source="",
    )


GROWS = said("grows", section=3)


def test_a_finding_says_the_fact_and_the_reason_of_its_rule() -> None:
    finding = Finding.of(rule("warning"), Fact(3, GROWS))
    assert (finding.says, finding.reason) == (GROWS, Said("rise"))
    assert (finding.rule, finding.severity, finding.section) == ("rise", "warning", 3)
    assert finding.standing == "common practice"


def test_a_fact_may_bring_its_own_reason_and_standing() -> None:
    fact = Fact(3, GROWS, reason=Said("reach"), standing="arithmetic")
    finding = Finding.of(rule("warning"), fact)
    assert finding.reason == Said("reach")
    assert finding.standing == "arithmetic"


@pytest.mark.parametrize(
    ("severity", "milder", "outcome"),
    [
        ("warning", None, "warning"),
        ("warning", "note", "note"),
        ("error", "note", "note"),
        ("note", "warning", "note"),
    ],
)
def test_a_fact_may_be_milder_than_its_rule_and_never_graver(
    severity: Severity, milder: Severity, outcome: Severity
) -> None:
    assert Finding.of(rule(severity), Fact(1, GROWS, milder)).severity == outcome
