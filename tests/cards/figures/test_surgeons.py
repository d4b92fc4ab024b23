"""The surgeon's knots and the twisted-loop joint, held against their steps in knots.toml."""

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, alexander, closed, linking, passes

BOTH = [("double surgeon's", 2), ("triple surgeon's", 3)]


def halves(loop: Curve) -> tuple[Curve, Curve]:
    """Return a looped strand as the two that lie side by side, each running out of the fold."""
    tip = min(range(len(loop)), key=lambda place: loop[place][0])
    return loop[:tip], loop[:tip:-1]


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize(("name", "count"), BOTH)
def test_each_strand_is_an_overhand_of_so_many_passes(name: str, count: int, number: int) -> None:
    # an overhand passed n times, closed, is the (2, 2n + 1) torus knot: 5_1 and 7_1
    for strand in curves(stage(name, number, count)):
        assert alexander(closed(strand)) == 2 * count + 1
        assert alexander(closed(strand), t=2) == (2 ** (2 * count + 1) + 1) / 3


@pytest.mark.parametrize(("name", "count"), BOTH)
def test_pairs_cross_once_more_than_twice_the_passes(name: str, count: int) -> None:
    thick, _ = passes(curves(stage(name, 0, count)), "AB")
    own = [passed for passed in thick.split() if passed == "OA" or passed == "UA"]
    assert len(own) == 2 * (2 * count + 1)
    assert own == ["UA", "OA"] * (len(own) // 2)


@pytest.mark.parametrize(("name", "count"), BOTH)
def test_drawn_up_the_strands_lie_as_they_were_laid(name: str, count: int) -> None:
    kinds = []
    for number in (0, 1):
        a, b = (
            closed(curve, far=far)
            for curve, far in zip(curves(stage(name, number, count)), (60, 75), strict=True)
        )
        kinds.append((linking(a, b), alexander(a, b), alexander(a, b, t=2)))
    assert kinds[0] == kinds[1]


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize("name", ["double surgeon's", "triple surgeon's", "twisted-loop joint"])
def test_tags_lie_opposite_each_beside_the_other_standing_part(name: str, number: int) -> None:
    if name == "twisted-loop joint" and number:
        return
    thick, thin = stage(name, number, 3)
    assert thick.last_cut
    assert thin.first_cut
    assert not thick.first_cut
    assert not thin.last_cut
    assert thick.points[0][0] < thin.points[0][0]  # the tag on the left is the thin one
    assert thick.points[-1][0] < thin.points[-1][0]  # on the right, the thick one
    for end in (0, -1):
        assert abs(thick.points[end][1] - thin.points[end][1]) < 1.3


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize("count", [2, 3])
def test_surgeons_loop_is_the_same_knot_in_a_folded_strand(number: int, count: int) -> None:
    (loop,) = stage("surgeon's loop", number, count)
    for half in halves(loop.points):
        assert alexander(closed(half)) == 2 * count + 1
    assert alexander(closed(loop.points)) == 1  # it is tied without the ends
    assert loop.last_cut
    assert not loop.first_cut


@pytest.mark.parametrize("number", [0, 1])
def test_surgeons_loop_leaves_its_tag_by_the_standing_part(number: int) -> None:
    (loop,) = stage("surgeon's loop", number, 2)
    (x1, y1, _), (x2, y2, _) = loop.points[0], loop.points[-1]
    assert x1 > x2 > 2
    assert abs(y1 - y2) < 1.3


@pytest.mark.parametrize(("count", "determinant"), [(1, 5), (2, 9), (3, 13), (4, 17)])
def test_twisted_loop_is_a_twist_knot_of_two_half_turns_a_turn(
    count: int, determinant: int
) -> None:
    # One full turn makes the figure-eight knot 4_1, determinant 5; each more adds two half-turns:
    # 6_1, 8_1, 10_1 (D. Rolfsen, Knots and Links): 9, 13, 17.
    for strand in curves(stage("twisted-loop joint", 0, count)):
        assert alexander(closed(strand)) == determinant
