"""The slim beauty, held against its steps in knots.toml."""

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, alexander, closed, passes, turns

OVERHAND = -1.2  # what lies to the right of it
TURNS = -5.0  # what lies to the left


def legs(thin: Curve, fold_at: int = 1) -> tuple[Curve, Curve]:
    """Return both legs of the folded strand, from the right to the fold, its lowest place.

    In the first stage the fold is at the left: `fold_at` is 0.
    """
    fold = min(range(len(thin)), key=lambda place: thin[place][fold_at])
    return thin[: fold + 1], thin[: fold - 1 : -1]


def parted(leg: Curve) -> tuple[Curve, Curve, Curve]:
    """Return a leg in the turns out, in those back, and in the gap."""
    end = min(range(len(leg)), key=lambda place: leg[place][0])
    start = next(place for place in range(end) if leg[place][0] < TURNS)
    gap = next(place for place in range(end, len(leg)) if leg[place][0] > TURNS)
    return leg[start : end + 1], leg[end : gap + 1], leg[gap:]


@pytest.mark.parametrize("number", [0, 1])
def test_thick_strand_is_tied_in_a_double_overhand(number: int) -> None:
    thick, _ = curves(stage("slim beauty", number, 2, 7))
    assert alexander(closed(thick)) == 5  # 5_1
    assert alexander(closed(thick), t=2) == 11


@pytest.mark.parametrize("of", [0, 1])
def test_thin_fold_goes_through_both_holes_of_the_eight(of: int) -> None:
    thick, thin = curves(stage("slim beauty", 0, 2, 7))
    met, _ = passes([legs(thin, 0)[of], thick], "LT")
    # over one side, within the turn at the eight's middle, under the other side; then across
    assert met.split() == ["OT", "UT", "OT", "UT", "UT"]
    assert 0 < thick[-1][1] - thin[0][1] < 2.5  # in beside the short end
    assert 0 < thick[-1][1] - thin[-1][1] < 2.5


@pytest.mark.parametrize("of", [0, 1])
def test_eight_drawn_up_is_the_overhand_with_the_thin_fold_in_it(of: int) -> None:
    kinds = []
    for number, left in ((0, -9.5), (1, -4.6)):
        thick, thin = curves(stage("slim beauty", number, 2, 7))
        leg = legs(thin, number)[of]
        out = leg[: next(place for place, (x, *_) in enumerate(leg) if x < left)]
        x, y, z = out[-1]
        ring = closed([*out, (x - 3, y, z)])
        kinds.append([alexander(closed(thick, far=75), ring, t=t) for t in (-1, 2, 3)])
    assert kinds[0] == kinds[1]


@pytest.mark.parametrize("of", [0, 1])
def test_thin_fold_goes_through_the_overhand_beside_the_thick_tag(of: int) -> None:
    thick, thin = curves(stage("slim beauty", 1, 2, 7))
    leg = (thin, thin[::-1])[of]
    end = next(place for place, point in enumerate(leg) if point[0] < OVERHAND)
    met, _ = passes([leg[:end], thick], "LT")
    # behind each pass of the overhand and before its back, and out behind the last: within it
    assert met.split() == ["UT", "OT"] * 2 + ["UT"]
    tag = max(y for x, y, _ in thick[-20:])
    assert all(abs(y - tag) < 2.3 for _, y, _ in leg[:end])


def test_thin_fold_first_lies_along_the_thick_strand() -> None:
    thick, thin = stage("slim beauty", 0, 2, 7)
    fold = min(thin.points)
    assert thick.points[0][0] < fold[0] < TURNS - 2
    assert len(passes(curves((thick, thin)), "TL")[1].split()) == 10  # only in the overhand


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize(("count", "back"), [(7, 3), (5, 2)])
def test_thin_fold_winds_out_and_back_over_its_own_turns(
    number: int, count: int, back: int
) -> None:
    _, thin = curves(stage("slim beauty", 1, 2, count))
    out, inwards, _ = parted(legs(thin)[number])
    assert turns(out) == pytest.approx(-count + back - 0.25, abs=0.2)
    assert turns(inwards) == pytest.approx(0.25 - back, abs=0.2)  # round the same way
    assert max(y for _, y, _ in inwards) - max(y for _, y, _ in out) > 0.8


@pytest.mark.parametrize("number", [0, 1])
def test_thin_fold_ends_in_the_gap(number: int) -> None:
    thick, thin = curves(stage("slim beauty", 1, 2, 7))
    leg, other = legs(thin)[number], legs(thin)[1 - number]
    *_, end = parted(leg)
    own, others = ([p for p in of[:90] if p[0] > TURNS] for of in (leg, other))
    met, *_ = passes([end, thick, own, others], "ETLL")
    # behind both legs on their way to the turns, and before the thick strand
    assert met.split() == ["UL", "UL", "OT"]


def test_slim_beauty_leaves_thick_and_thin_tags_on_the_right() -> None:
    thick, thin = stage("slim beauty", 1, 2, 7)
    assert thick.points[0][0] < min(x for x, *_ in thin.points)
    assert thick.points[-1][0] < thin.points[-1][0] < thin.points[0][0]
    assert thick.last_cut
    assert thin.last_cut
    assert not thin.first_cut
