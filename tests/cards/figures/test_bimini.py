"""The bimini twist, held against its steps in knots.toml; few of its turns are drawn."""

from itertools import takewhile

from tagend.cards.figures.frames import knot_frames
from tests.cards.figures.stages import KNOTS, curves, stage
from tests.cards.figures.topology import alexander, closed, passes

TWIST, ROLLED, HITCHED, LOCKED, _ = knot_frames(KNOTS.find("bimini twist"), 0, 20)


def test_it_comes_undone_until_its_legs_are_hitched() -> None:
    rings = [closed(of.strands[0].points) for of in (TWIST, ROLLED, HITCHED, LOCKED)]
    assert [alexander(ring) == 1 for ring in rings] == [True, True, False, False]


def test_tag_half_hitches_one_leg_and_then_the_other() -> None:
    line, before = HITCHED.strands[0].points, ROLLED.strands[0].points
    fork = sum(
        1 for _ in takewhile(lambda pair: pair[0] == pair[1], zip(line, before, strict=False))
    )
    met, _ = passes([line[fork - 1 :], line[:fork]], "TL")
    half_hitch = ["UT", "OL", "UL", "OT"]  # over the leg and behind it, and out over itself
    assert met.split() == [*half_hitch, "UL", *half_hitch, "UL"]  # each behind the lower leg


def test_drawn_up_it_is_the_knot_that_was_laid_up() -> None:
    laid, drawn = (closed(curves(stage("bimini twist", number, 20))[0]) for number in (0, 1))
    assert [alexander(laid, t=t) for t in (-1, 2)] == [alexander(drawn, t=t) for t in (-1, 2)]
