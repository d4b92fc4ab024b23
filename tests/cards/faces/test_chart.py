import re

import pytest
from hypothesis import given, settings

from tagend.cards.faces.chart import profile_chart
from tagend.cards.leader.leader import Leader
from tagend.layouts.paper.face import Face, Path
from tests.seen import faults, paths, points, runs, words
from tests.tieable import counts, seeds, tieable
from tests.told import scale, told
from tests.written import leader, recipe, section

SCALE = scale()
TWO = leader(
    recipe(section("60 in", "0.020 in"), section("20 in", "0.010 in"), butt="none", fly="none")
)


def chart(of: Leader, width: float = 500) -> Face:
    block = profile_chart(told(of), SCALE, width)
    return Face("chart", width, block.height, block.items)


def curves(face: Face) -> list[Path]:
    """Return the curve of each plot, which is drawn with the thickest pen."""
    return [path for path in paths(face) if path.line == 1.5]


def test_two_plots_share_the_axis_of_the_leader() -> None:
    face = chart(TWO)
    assert faults(face, 0) == []
    first, second = curves(face)
    assert [run.text for run in runs(face) if run.text in ("butt", "fly")] == ["butt", "fly"] * 2
    for curve in (first, second):
        xs = [x for x, _ in points(curve)]
        # 60 of 80 in: the step stands at three quarters
        assert xs[1] - xs[0] == pytest.approx(0.75 * (xs[-1] - xs[0]))
        assert xs[2] == xs[1]


def test_diameters_are_read_off_their_marks() -> None:
    face = chart(TWO)
    curve, _ = curves(face)
    ys = [y for _, y in points(curve)]
    marks = {run.text: run.y - 0.25 * run.size for run in runs(face) if run.text.startswith("0.0")}
    assert list(marks) == ["0.005", "0.010", "0.015", "0.020"]
    assert ys == pytest.approx([marks["0.020"]] * 2 + [marks["0.010"]] * 2)


def test_stiffness_goes_with_the_fourth_power_of_the_diameter() -> None:
    # EI = E x pi x d^4 / 64 (any mechanics of materials text): twice as thick, 16 times as stiff.
    face = chart(TWO)
    _, curve = curves(face)
    ys = [y for _, y in points(curve)]
    marks = {run.text: run.y - 0.25 * run.size for run in runs(face) if "×" in run.text}
    assert ys[-1] == pytest.approx(marks["1 ×"])
    decade = marks["1 ×"] - marks["10 ×"]
    assert (ys[-1] - ys[0]) / decade == pytest.approx(1.2041, abs=1e-4)  # log10 16


def test_a_knotless_taper_slopes_and_a_joint_is_a_step() -> None:
    of = leader(recipe(section("60 in", "0.020 in", tapers_to="0.012 in"), section("20 in", "4X")))
    curve, _ = curves(chart(of))
    (_, y0), (_, y1), (_, y2), (_, y3) = points(curve)
    assert y0 < y1 < y2 == y3


def test_a_level_leader_has_a_plot_too() -> None:
    of = leader(recipe(section("9 ft", "0.010 in"), butt="none", fly="none"))
    face = chart(of)
    assert faults(face, 0) == []
    for curve in curves(face):
        (_, start), (_, end) = points(curve)
        assert start == end


def test_narrow_paper_has_one_plot_above_the_other() -> None:
    first, second = curves(chart(TWO, 220))
    assert max(y for _, y in points(first)) < min(y for _, y in points(second))
    assert faults(chart(TWO, 220), 0) == []


@pytest.mark.parametrize("thick", ["0.004 in", "0.023 in", "0.055 in", "3 mm"])
def test_there_are_few_round_marks_for_any_strand(thick: str) -> None:
    of = leader(recipe(section("9 ft", thick), butt="none", fly="none"))
    face = chart(of)
    assert faults(face, 0) == []
    marks = re.findall(r"0\.\d{3}", words(face))
    assert 1 <= len(marks) <= 8


@given(seed=seeds, count=counts)
@settings(max_examples=40, deadline=None)
def test_every_chart_is_readable_and_its_curves_inside(seed: int, count: int | None) -> None:
    of = tieable(seed, count)
    for width in (220, 500):
        face = chart(of, width)
        assert faults(face, 0) == []
        for curve in curves(face):
            assert all(0 <= x <= width + 1e-6 and 0 <= y <= face.height for x, y in points(curve))


def test_metric_leaders_have_metric_marks() -> None:
    of = leader(recipe(section("150 cm", "0.40 mm"), section("50 cm", "0.20 mm")))
    face = chart(of)
    assert "diameter, mm" in words(face)
    assert re.findall(r"0\.\d\d\b", words(face)) == ["0.10", "0.20", "0.30", "0.40"]
    assert "1 m" in words(face)
