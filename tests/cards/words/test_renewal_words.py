from tagend.cards.leader.renewal import renewals
from tagend.cards.words.renewal_words import renewal_lines
from tests.told import told
from tests.written import PRACTICE, SIX, leader, recipe, section


def lines(knot: str | None = None, length: str = "20 in") -> list[str]:
    two = recipe(section(length, "0.012 in", knot=knot), section("20 in", "0.009 in"))
    return list(renewal_lines(told(leader(two)), renewals(leader(two), PRACTICE)))


def test_a_line_says_the_cost_and_how_often() -> None:
    six = leader(SIX)
    assert renewal_lines(told(six), renewals(six, PRACTICE)) == (
        "Each new section 6 takes 3 3/4 in of section 5: good for 1.",
    )


def test_a_line_says_that_a_section_is_spent_at_once_or_never() -> None:
    assert "spends it" in lines(length="5 in")[0]
    assert "takes nothing of section 1" in lines(knot="ring joint")[0]
