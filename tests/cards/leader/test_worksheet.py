from cfractions import Fraction

from tagend.cards.leader.worksheet import worksheet
from tests.written import PRACTICE, leader, practice, recipe, section

STEEP = recipe(section("6 ft", "0.021 in"), section("3 ft", "0.013 in"))


def test_a_worksheet_holds_the_leader_and_what_the_audit_finds() -> None:
    sheet = worksheet(STEEP, PRACTICE)
    assert sheet.leader == leader(STEEP)
    assert [finding.rule for finding in sheet.findings] == ["step"]


def test_a_worksheet_goes_by_the_persons_own_practice() -> None:
    lenient = practice('[rules.step]\nseverity = "note"\n[lap]\n"triple surgeon\'s" = "1 ft"\n')
    sheet = worksheet(STEEP, lenient)
    assert [(f.rule, f.severity) for f in sheet.findings] == [("step", "note")]
    assert sheet.leader.pieces[0].at_fly.takes_mm == Fraction("152.4")  # 6 in
