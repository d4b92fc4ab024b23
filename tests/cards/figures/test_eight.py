"""The figure-eight and the davy on an eye, held against their steps in knots.toml."""

import pytest

from tagend.cards.figures.frames import knot_frames
from tests.cards.figures.stages import KNOTS, curves, stage
from tests.cards.figures.topology import alexander, closed, passes


def test_it_is_the_figure_eight_of_the_tables() -> None:
    strand, _ = curves(stage("figure-eight", 0, 0))
    # 4_1: determinant 5, and t^2 - 3t + 1 at 2 (D. Rolfsen, Knots and Links)
    assert [alexander(closed(strand), t=t) for t in (-1, 2)] == [5, 1]


def test_tag_goes_where_its_steps_take_it() -> None:
    strand, *_ = passes(curves(stage("figure-eight", 0, 0)), "SE")
    met = [passed[0] for passed in strand.split() if passed[1] == "S"]
    standing, first_loop = ["O", "U", "O"], ["U"]
    # over the standing part, back behind it, and from the front through the first loop
    assert met == [*standing, *first_loop, "O", "U", "O", "U"]


def test_davy_is_first_an_overhand_round_the_standing_part() -> None:
    strand, _ = knot_frames(KNOTS.find("davy"), 0, 0)[0].strands
    assert alexander(closed(strand.points)) == 3  # 3_1


@pytest.mark.parametrize("number", [0, 1])
def test_davy_puts_its_tag_once_more_through_the_loop_by_the_eye(number: int) -> None:
    strand, eye = curves(stage("davy", number, 0))
    met = [passed[0] for passed in passes([strand, eye], "SE")[0].split() if passed[1] == "S"]
    # over the standing part, behind it, out over the own part; behind that, and over the standing
    assert met[-5:] == ["O", "U", "O", "U", "O"]
    # 5_2: determinant 7, and 2t^2 - 3t + 2 at 3 (D. Rolfsen, Knots and Links)
    assert [alexander(closed(strand), t=t) for t in (-1, 3)] == [7, 11]
    outermost = min(x for x, *_ in strand[len(strand) // 2 :])
    assert outermost < strand[-1][0] < eye[0][0]  # it ends between overhand and hook
