"""The uni to uni, held against its steps in knots.toml."""

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import alexander, closed, passes, turns

TURNS = [(4, 4), (3, 5), (6, 6)]


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_each_half_alone_is_an_overhand_of_as_many_passes(
    number: int, thick: int, thin: int
) -> None:
    # The tag passed n times through its own loop is an n-fold overhand, which closed is the
    # (2, 2n + 1) torus knot: determinant 2n + 1 (C. C. Adams, The Knot Book).
    a, b = curves(stage("uni to uni", number, thick, thin))
    assert alexander(closed(a)) == 2 * thick + 1
    assert alexander(closed(b)) == 2 * thin + 1


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_turns_go_round_both_strands_and_through_the_loop(thick: int, thin: int) -> None:
    a, b = passes(curves(stage("uni to uni", 0, thick, thin)), "AB")
    # The thick: through the other's turns; under and over its own, and its bend under the tag;
    # the turns round itself and the other; the tag over the bend.
    own = ["UA", "OA"] * thick + ["UA"]
    assert a.split() == ["OB", "UB"] * thin + own + ["OA", "OB", "UB", "UA"] * thick + ["OA"]
    other = ["UB", "OB"] * thin + ["UB"]
    assert [name for name in b.split() if name[1] == "B"] == other + ["OB", "UB"] * thin + ["OB"]


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_both_tags_wind_in_one_sense(thick: int, thin: int) -> None:
    a, b = curves(stage("uni to uni", 0, thick, thin))
    for curve, count in ((a, thick), ([(-x, -y, z) for x, y, z in b], thin)):
        highest = max(range(len(curve)), key=lambda place: curve[place][1])
        # from the loop's top to the tag, round the middle of the two strands
        assert turns(curve[highest:]) == pytest.approx(count, abs=0.2)


@pytest.mark.parametrize("number", [0, 1])
def test_tags_leave_at_the_outer_ends(number: int) -> None:
    a, b = curves(stage("uni to uni", number, 5, 6))
    assert a[-1][0] > max(x for x, *_ in a[:-6])
    assert b[-1][0] < min(x for x, *_ in b[:-6])


@pytest.mark.parametrize(("thick", "thin"), TURNS)
def test_drawn_up_it_is_the_knot_that_was_laid_up(thick: int, thin: int) -> None:
    for t in (-1, 2):
        kinds = []
        for number in (0, 1):
            a, b = curves(stage("uni to uni", number, thick, thin))
            one = alexander(closed(a, b[::-1]), t=t)
            kinds.append((one, alexander(closed(a), closed(b, far=75), t=t)))
        assert kinds[0] == kinds[1]
