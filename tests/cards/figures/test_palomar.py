"""The palomar, held against its steps in knots.toml."""

from itertools import accumulate, pairwise
from math import dist

import pytest

from tests.cards.figures.stages import curves, stage
from tests.cards.figures.topology import Curve, alexander, closed, passes

SHORTER = 1.8  # the tag than the standing part


def parted(line: Curve) -> tuple[Curve, Curve, Curve]:
    """Return the strand up to its fold, the fold, and the way back from it to the tag.

    The fold is half way along the strand, and is what rises above its two legs.
    """
    along = list(accumulate((dist(p, q) for p, q in pairwise(line)), initial=0.0))
    first = last = sum(far < (along[-1] + SHORTER) / 2 for far in along)
    while line[first][1] > -1.3:
        first -= 1
    while line[last][1] > -1.3:
        last += 1
    return line[: first + 1], line[first : last + 1], line[last:]


@pytest.mark.parametrize("number", [0, 1])
def test_doubled_end_goes_through_the_eye(number: int) -> None:
    line, eye = curves(stage("palomar", number, 0))
    out, fold, back = parted(line)
    ring = [point for point in eye if point[0] < max(x for x, *_ in eye) - 4]
    out_met, _, back_met, _ = passes([out, fold, back, ring], "OFBE")
    assert [passed for passed in out_met.split() if passed[1] == "E"] == ["OE", "UE"]
    assert [passed for passed in back_met.split() if passed[1] == "E"] == ["UE", "OE"]


@pytest.mark.parametrize("number", [0, 1])
def test_doubled_end_is_tied_in_an_overhand(number: int) -> None:
    line, _ = curves(stage("palomar", number, 0))
    out, _, back = parted(line)
    assert alexander(closed(out)) == 3
    assert alexander(closed(back)) == 3


def test_fold_is_passed_over_the_fly() -> None:
    line, eye = curves(stage("palomar", 0, 0))
    _, fold, _ = parted(line)
    met, _ = passes([fold, eye], "FE")
    assert met.split() == ["OE", "UE"]  # before it and behind it: the fly goes through the fold
    assert all(x > 9.5 for x, *_ in fold)  # beyond the eye


def test_drawn_up_the_fold_lies_round_all_that_goes_to_the_eye() -> None:
    line, eye = curves(stage("palomar", 1, 0))
    out, fold, back = parted(line)
    _, met, _, _ = passes([out, fold, back, eye], "OFBE")
    # over both legs to the eye and both that come from it, and back under all four
    assert sorted(met.split()[:4]) == ["OB", "OB", "OO", "OO"]
    assert sorted(met.split()[4:]) == ["UB", "UB", "UO", "UO"]
    assert max(x for x, *_ in fold) < min(x for x, *_ in eye)


@pytest.mark.parametrize("number", [0, 1])
def test_palomar_is_tied_without_an_end(number: int) -> None:
    # Only the fold is passed over anything, and that the fly: without a fly it draws out.
    line, _ = curves(stage("palomar", number, 0))
    assert alexander(closed(line)) == 1
    assert alexander(closed(line), t=2) == 1


@pytest.mark.parametrize("number", [0, 1])
def test_palomar_leaves_its_tag_beside_the_standing_part(number: int) -> None:
    line, _ = stage("palomar", number, 0)
    (x1, y1, _), (x2, y2, _) = line.points[0], line.points[-1]
    assert x1 < x2 < min(x for x, y, _ in line.points if y > 1)
    assert abs(y1 - y2) == pytest.approx(1)
