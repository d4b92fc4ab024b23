import pytest

from tagend.cards.leader.leader import Leader
from tagend.cards.practice.knots import Sides
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.cards.words.tying_words import TyingLine, turn_words, tying_lines
from tests.cards.leader.test_tying_order import FOUR
from tests.written import leader, recipe, section


def joints(of: Leader) -> list[TyingLine]:
    return [line for line in tying_lines(Told(of, ENGLISH)) if line.where[0].isdigit()]


def test_each_knot_says_where_it_is() -> None:
    lines = tying_lines(Told(FOUR, ENGLISH))
    assert [line.where for line in lines] == [
        "at the butt",
        "1 to 2",
        "2 to 3",
        "3 to 4",
        "at the fly",
    ]
    assert all(line.seat for line in lines)


def test_a_knot_asks_what_must_wait() -> None:
    first, second, third = joints(FOUR)
    assert second.asks == "section 3 passes through whole, so tie it before 3 to 4"
    assert (first.asks, third.asks) == (None, None)


def test_the_last_such_joint_comes_before_the_fly() -> None:
    of = leader(
        recipe(section("46 in", "0.012 in", knot="double surgeon's"), section("20 in", "4X"))
    )
    (line,) = joints(of)
    assert line.asks == "section 2 passes through whole, so tie it before the fly"


@pytest.mark.parametrize(
    ("thick", "thin", "says"),
    [
        (0, 0, ""),
        (5, 5, "5 turns"),
        (4, 6, "4 turns thick, 6 thin"),
        (1, 3, "1 turn thick, 3 thin"),
        (0, 12, "12 turns"),
        (3, 0, "3 turns"),
        (1, 1, "1 turn"),
    ],
)
def test_turns_are_said_once_where_both_sides_have_them_alike(
    thick: int, thin: int, says: str
) -> None:
    assert turn_words(Sides(thick, thin), ENGLISH) == says


def test_a_joint_says_its_turns() -> None:
    first, second, _ = joints(FOUR)
    assert first.says == f"blood, {turn_words(FOUR.joints[0].turns, ENGLISH)}"
    assert second.says == "triple surgeon's, 3 turns"


def test_an_end_says_its_loop() -> None:
    butt, *_, fly = tying_lines(Told(FOUR, ENGLISH))
    assert (butt.says, fly.says) == ("perfection loop, 3/4 in", "clinch")
