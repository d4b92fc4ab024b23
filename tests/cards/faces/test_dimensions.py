from itertools import accumulate

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tagend.cards.faces.block import Block
from tagend.cards.faces.dimensions import dimension_line, distances, lengths_above
from tagend.cards.faces.plot import Plot, plot
from tagend.cards.leader.leader import Leader
from tagend.layouts.base.quantities import INCH_MM
from tagend.layouts.paper.face import Face, Path
from tests.drawable import leaders
from tests.seen import paths, points, runs
from tests.told import scale, told
from tests.written import leader, recipe, section

WIDTH = 226.0  # points, of an ID-1 card within its inset
SCALE = scale()
Y = 10.0

SIX = leader(
    recipe(
        *(section(f"{length} in", f"0.0{23 - 2 * place} in")
          for place, length in enumerate((46, 24, 14, 10, 8))),
        section("30 in", "0.010 in", "fluorocarbon"),
        butt="perfection loop",
    )
)  # fmt: skip
SHORT = leader(
    recipe(
        section("60 in", "0.023 in"),
        section("3 in", "0.020 in"),
        section("60 in", "0.017 in"),
        butt="none",
    )
)


def along(of: Leader, width: float = WIDTH) -> Plot:
    return plot(told(of), SCALE, width, 9.0)


def face(block: Block, width: float = WIDTH) -> Face:
    return Face("figures", width, 60, block.items)


def below(of: Leader, width: float = WIDTH) -> Face:
    return face(dimension_line(along(of, width), Y), width)


def above(of: Leader, width: float = WIDTH) -> Face:
    return face(lengths_above(along(of, width), -6.0), width)


def figures(of: Face) -> list[str]:
    return [run.text for run in runs(of)]


def middles(of: Face) -> list[float]:
    return [run.x + run.width / 2 for run in runs(of)]


def leads(of: Face) -> list[Path]:
    """Return the slanting lines between figures and what they stand for."""
    slanting = []
    for path in paths(of):
        (x, y), (x2, y2), *_ = points(path)
        if path.line < 0.5 and x != x2 and y != y2:
            slanting.append(path)
    return slanting


def test_distances_run_from_the_fly_to_the_butt() -> None:
    # 30, + 8, + 10, + 14, + 24, + 46
    inches = [run.high_mm / INCH_MM for run in distances(SIX)]
    assert inches == [132, 86, 62, 48, 38, 30]


def test_a_range_gives_ranges_all_the_way_up() -> None:
    of = leader(recipe(section("40 in", "0.020 in"), section("22 to 28 in", "0.012 in")))
    assert figures(below(of)) == ["62–68 in", "22–28", "fly 0"]
    assert figures(above(of)) == ["40", "22–28"]


def test_the_dimension_line_says_the_total_with_its_unit_and_ends_in_nought() -> None:
    assert figures(below(SIX)) == ["132 in", "86", "62", "48", "38", "30", "fly 0"]


def test_metric_lengths_are_shown_in_centimetres() -> None:
    of = leader(recipe(section("80 cm", "0.43 mm"), section("50.5 cm", "0.3 mm")))
    assert figures(below(of)) == ["130.5 cm", "50.5", "fly 0"]


def test_each_figure_stands_under_its_joint() -> None:
    shown = dict(zip(figures(below(SIX)), middles(below(SIX)), strict=True))
    for text, band in zip(("86", "62", "48"), along(SIX).bands[1:], strict=False):
        assert shown[text] == pytest.approx(band.x)


def test_the_line_runs_from_the_first_knot_to_the_origin() -> None:
    plotted, drawn = along(SIX), below(SIX)
    flat = [points(path) for path in paths(drawn) if points(path)[0][1] == points(path)[1][1] == Y]
    assert flat[0][0][0] == plotted.start
    (left, right) = (min(x for x, _ in flat[-1]), max(x for x, _ in flat[-1]))
    assert left <= plotted.end <= right + 1.3  # the circle of 1.3 pt around the end


def test_every_joint_has_a_line_from_the_strand_to_the_dimension_line() -> None:
    plotted = along(SIX)
    upright = [
        points(path) for path in paths(below(SIX)) if points(path)[0][0] == points(path)[1][0]
    ]
    assert [path[0][0] for path in upright] == [band.x for band in plotted.bands]
    for (x, top), (_, bottom) in upright:
        assert plotted.half(x) < top < Y < bottom


def test_each_length_stands_over_its_piece() -> None:
    assert figures(above(SIX)) == ["46", "24", "14", "10", "8", "30"]
    assert middles(above(SIX)) == pytest.approx([band.middle for band in along(SIX).bands])


def test_a_figure_that_had_to_move_is_led_back_to_its_joint() -> None:
    joints = [band.x for band in along(SHORT).bands[1:]]
    drawn = below(SHORT)
    assert figures(drawn) == ["123 in", "63", "60", "fly 0"]
    assert [points(lead)[0][0] for lead in leads(drawn)] == joints
    assert [points(lead)[1][0] for lead in leads(drawn)] == middles(drawn)[1:3]


def test_a_length_that_had_to_move_is_led_back_to_its_piece() -> None:
    pieces = [section("1 1/16 in", f"0.0{20 - place} in") for place in range(3)]
    of = leader(recipe(*pieces, section("12 ft", "0.010 in"), butt="none"))
    found = leads(above(of))
    assert len(found) >= 2
    assert {points(lead)[1][0] for lead in found} <= {band.middle for band in along(of).bands}


def test_where_room_is_short_the_total_and_the_nought_stay() -> None:
    pieces = [section(f"{length} in", "0.020 in") for length in (20, *[5] * 18, 40)]
    of = leader(recipe(*pieces, butt="none"))
    shown = figures(below(of, 127))
    assert (shown[0], shown[-1]) == ("150 in", "fly 0")  # 20 + 18 × 5 + 40
    # The joints beside the longest pieces stay, and some of the others.
    assert {"130", "40"} <= set(shown)
    assert len(shown) < 21


@given(leaders(), st.floats(127, 540))
def test_figures_agree_with_the_lengths_of_the_recipe(of: Leader, width: float) -> None:
    """Add the lengths as they were written, in their own unit, from the fly upwards."""
    assume(not any(piece.bought for piece in of.pieces))  # those give their side of a knot
    spans = [section.length for section in reversed(of.recipe.sections)]
    unit = of.unit
    mm = INCH_MM if unit == "in" else 10
    lows = accumulate(int(span.low.mm / mm) for span in spans)
    highs = accumulate(int(span.high.mm / mm) for span in spans)
    runs_of = zip(lows, highs, strict=True)
    *joints, total = [str(high) if low == high else f"{low}–{high}" for low, high in runs_of]
    shown = figures(below(of, width))
    assert shown[0] == f"{total} {unit}"
    assert shown[-1] == "fly 0"
    left = iter(reversed(joints))
    assert all(figure in left for figure in shown[1:-1])  # in their order, none invented


@given(leaders(), st.floats(127, 540))
def test_figures_are_left_out_only_where_they_do_not_fit(of: Leader, width: float) -> None:
    drawn = below(of, width)
    if len(runs(drawn)) <= len(of.pieces):
        widest = max(run.width for run in runs(drawn))
        taken = sum(run.width + 0.7 * SCALE.small for run in runs(drawn))
        assert taken + widest > width
