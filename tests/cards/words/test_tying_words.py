import pytest

from tagend.cards.leader.leader import Leader
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
        "butt",
        "1 to 2",
        "2 to 3",
        "3 to 4",
        "fly",
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
    ("upper", "lower", "material", "knot", "says"),
    [
        ("0.013 in", "0.013 in", "nylon", "blood", "5 turns"),
        ("0.016 in", "0.013 in", "nylon", "blood", "5 turns above, 7 below"),
        ("0.013 in", "0.016 in", "nylon", "blood", "7 turns above, 5 below"),
        ("0.013 in", "0.011 in", "nylon", "loop to loop", "perfection loop"),
        ("0.012 in", "0.008 in", "nylon", "ring joint", "clinch, 5 turns"),
        ("0.024 in", "0.012 in", "nylon", "albright", "12 turns of section 2"),
        ("0.021 in", "0.015 in", "wire", "albright", "10 turns of section 1"),
        ("0.021 in", "0.015 in", "wire", "swivel", "clinch, 3 turns + haywire twist, 4 turns"),
    ],
)
def test_a_joint_says_which_strand_makes_how_many_turns(
    upper: str, lower: str, material: str, knot: str, says: str
) -> None:
    both = leader(recipe(section("30 in", upper, knot=knot), section("20 in", lower, material)))
    assert turn_words(both.joints[0], 1, ENGLISH) == says


def test_a_joint_says_its_turns_and_its_lap() -> None:
    first, second, _ = joints(FOUR)
    assert first.says == f"blood, {turn_words(FOUR.joints[0], 1, ENGLISH)}, {lap(1)}"
    assert second.says == f"triple surgeon's, 3 turns, {lap(2)}"


def test_a_dropper_is_told_apart_from_the_lap() -> None:
    of = leader(recipe(section("46 in", "0.012 in", dropper="6 in"), section("20 in", "0.010 in")))
    (line,) = joints(of)
    assert line.says.endswith("lap 5 1/2 in and 6 in for the dropper")


def lap(place: int) -> str:
    return Told(FOUR, ENGLISH).lap(place)


def test_an_end_says_its_loop() -> None:
    butt, *_, fly = tying_lines(Told(FOUR, ENGLISH))
    assert (butt.says, fly.says) == (
        "perfection loop, 3/4 in, fold 6 1/4 in",
        "clinch, 5 turns, fold 2 3/4 in",
    )
