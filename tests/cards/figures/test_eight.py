"""The figure-eight on an eye, held against its steps in knots.toml."""

from tests.cards.figures.stages import curves, stage
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
