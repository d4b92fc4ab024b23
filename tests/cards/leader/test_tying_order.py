from hypothesis import given, settings

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.tying_order import Tie, tying_order
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
    return [tie for tie in tying_order(of) if tie.above is not None and tie.below is not None]


def test_knots_are_tied_from_the_butt_to_the_fly() -> None:
    ties = [(tie.above, tie.below, tie.knot.name) for tie in tying_order(FOUR)]
    assert ties == [
        (None, 1, "perfection loop"),
        (1, 2, "blood"),
        (2, 3, "triple surgeon's"),
        (3, 4, "blood"),
        (4, None, "clinch"),
    ]


def test_a_piece_that_passes_whole_through_a_knot_has_nothing_tied_below_it() -> None:
    first, second, third = joints(FOUR)
    # Both strands of a surgeon's knot go through its loop, the lower one with all that hangs on it.
    assert (second.passes, second.before) == (3, (3,))
    assert (first.passes, first.before) == (third.passes, third.before) == (None, ())


def test_the_last_such_joint_waits_for_no_other_joint() -> None:
    of = leader(
        recipe(section("46 in", "0.012 in", knot="double surgeon's"), section("20 in", "4X"))
    )
    (tie,) = joints(of)
    assert (tie.passes, tie.before) == (2, ())


def test_bare_ends_have_nothing_to_tie() -> None:
    bare = leader(recipe(section("9 ft", "4X"), butt="none", fly="none"))
    assert not list(tying_order(bare))


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
        assert tie.passes == (place + 1 if joint.knot.whole_side_passes else None)
    # The order given keeps what it asks.
    for place, tie in enumerate(ties, start=1):
        assert all(later > place for later in tie.before)
