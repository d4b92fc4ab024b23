import pytest
from hypothesis import given, settings

from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.tying_order import Tie, turn_words, tying_order
from tests.tieable import counts, seeds, tieable
from tests.written import leader, recipe, section

FOUR = leader(
    recipe(
        section("46 in", "0.023 in", knot="blood"),
        section("20 in", "0.020 in", knot="triple surgeon's"),
        section("20 in", "0.012 in", knot="blood"),
        section("24 in", "0.010 in"),
        butt="perfection loop",
        fly="clinch",
    )
)


def joints(of: Leader) -> list[Tie]:
    return [tie for tie in tying_order(of, ENGLISH) if tie.where[0].isdigit()]


def test_knots_are_tied_from_the_butt_to_the_fly() -> None:
    ties = tying_order(FOUR, ENGLISH)
    assert [tie.where for tie in ties] == [
        "at the butt",
        "1 to 2",
        "2 to 3",
        "3 to 4",
        "at the fly",
    ]
    names = ["perfection loop", "blood", "triple surgeon's", "blood", "clinch"]
    assert [tie.knot.name for tie in ties] == names


def test_a_piece_that_passes_whole_through_a_knot_has_nothing_tied_below_it() -> None:
    first, second, third = joints(FOUR)
    # Both strands of a surgeon's knot go through its loop, the lower one with all that hangs on it.
    assert second.asks == "section 3 passes through whole, so tie it before 3 to 4"
    assert second.before == (3,)
    assert (first.asks, third.asks) == (None, None)
    assert (first.before, third.before) == ((), ())


def test_the_last_such_joint_comes_before_the_fly() -> None:
    of = leader(
        recipe(section("46 in", "0.012 in", knot="double surgeon's"), section("20 in", "4X"))
    )
    (tie,) = joints(of)
    assert tie.asks == "section 2 passes through whole, so tie it before the fly"
    assert tie.before == ()


def test_bare_ends_have_nothing_to_tie() -> None:
    bare = leader(recipe(section("9 ft", "4X"), butt="none", fly="none"))
    assert tying_order(bare, ENGLISH) == ()


@pytest.mark.parametrize(
    ("thick", "thin", "says"),
    [
        (0, 0, ""),
        (5, 5, "5 turns"),
        (4, 6, "4 turns thick, 6 thin"),
        (0, 12, "12 turns"),
        (3, 0, "3 turns"),
    ],
)
def test_turns_are_said_once_where_both_sides_have_them_alike(
    thick: int, thin: int, says: str
) -> None:
    assert turn_words(thick, thin, ENGLISH) == says


def test_a_joint_says_its_turns() -> None:
    first, second, _ = joints(FOUR)
    thick, thin = FOUR.joints[0].turns
    assert first.says == f"blood, {turn_words(thick, thin, ENGLISH)}"
    assert second.says == "triple surgeon's, 3 turns"


def test_an_end_says_its_loop() -> None:
    butt, *_, fly = tying_order(FOUR, ENGLISH)
    assert (butt.says, fly.says) == ("perfection loop, 3/4 in", "clinch")


@given(seeds, counts)
@settings(max_examples=80, deadline=None)
def test_every_whole_passing_joint_comes_before_all_lower_joints(
    seed: int, count: int | None
) -> None:
    of = tieable(seed, count)
    ties = joints(of)
    assert len(ties) == len(of.joints) == len(of.pieces) - 1
    for place, (tie, joint) in enumerate(zip(ties, of.joints, strict=True), start=1):
        assert tie.knot is joint.knot
        below = tuple(range(place + 1, len(ties) + 1))
        assert tie.before == (below if joint.knot.whole_side_passes else ())
        assert (tie.asks is not None) == joint.knot.whole_side_passes
    # The order given keeps what it asks.
    for place, tie in enumerate(ties, start=1):
        assert all(later > place for later in tie.before)
