import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.marks import marks, reach, rise
from tagend.cards.faces.plot import Plot, plot
from tagend.cards.leader.leader import Leader
from tagend.cards.recipe.recipe import Part, Recipe
from tagend.layouts.paper.face import Path
from tests.drawable import leaders
from tests.seen import points
from tests.told import scale, told
from tests.written import leader, recipe, section

WIDTH = 226.0


def joined(knot: str, *, dropper: str | None = None, part: Part | None = None) -> Recipe:
    """Return two pieces of 20 in with a knot between them and no knot at the ends."""
    upper = section("20 in", "0.020 in", knot=knot, dropper=dropper)
    return recipe(upper, section("20 in", "0.016 in", part=part), butt="none", fly="none")


def plotted(of: Recipe) -> Plot:
    return plot(told(leader(of)), scale(), WIDTH, 9.0)


def drawn(of: Recipe) -> list[Path]:
    return list(marks(plotted(of)))


def box(path: Path) -> tuple[float, float, float, float]:
    xs, ys = zip(*points(path), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def middle(path: Path) -> float:
    left, _, right, _ = box(path)
    return (left + right) / 2


def strokes(path: Path) -> bool:
    """Say whether a path is coils: straight strokes only, more than one."""
    return {step[0] for step in path.steps} == {"move", "line"} and len(path.steps) > 2


@pytest.mark.parametrize("knot", ["blood", "uni to uni", "albright", "slim beauty"])
def test_a_knot_that_winds_is_a_barrel_with_coils_at_its_joint(knot: str) -> None:
    barrel, coils = drawn(joined(knot))
    assert (middle(barrel), middle(coils)) == pytest.approx((WIDTH / 2, WIDTH / 2))
    assert strokes(coils)
    assert barrel.fill == 1.0


@pytest.mark.parametrize("knot", ["double surgeon's", "triple surgeon's", "twisted loop"])
def test_a_knot_made_of_loops_is_a_plain_barrel(knot: str) -> None:
    (barrel,) = drawn(joined(knot))
    assert middle(barrel) == pytest.approx(WIDTH / 2)
    assert not strokes(barrel)


def test_a_knot_stands_out_of_both_its_strands() -> None:
    of = plotted(joined("blood"))
    barrel, _ = marks(of)
    _, top, _, bottom = box(barrel)
    assert (-top, bottom) == pytest.approx((of.half(WIDTH / 2) + 1.3,) * 2)


def test_a_ring_is_a_ring() -> None:
    (ring,) = drawn(joined("ring joint"))
    left, top, right, bottom = box(ring)
    assert right - left == pytest.approx(bottom - top)
    assert (left + right) / 2 == pytest.approx(WIDTH / 2)


def test_two_loops_hold_one_another() -> None:
    one, other, _ = drawn(joined("loop to loop"))
    assert box(one)[0] < box(other)[0] < WIDTH / 2 < box(one)[2] < box(other)[2]


def test_a_short_piece_has_bars_for_knots() -> None:
    pieces = [section("3 in", f"0.0{20 - place} in", knot="blood") for place in range(3)]
    last = section("120 in", "0.010 in")
    found = drawn(recipe(*pieces, last, butt="none", fly="none"))
    assert [len(path.steps) for path in found] == [2, 2, 2]
    assert [box(path)[0] for path in found] == [box(path)[2] for path in found]


@pytest.mark.parametrize(("butt", "loops"), [("perfection loop", 1), ("nail knot", 0)])
def test_a_loop_at_the_butt_reaches_the_edge(butt: str, loops: int) -> None:
    whole = recipe(section("9 ft", "0.020 in"), butt=butt, fly="none")
    at_edge = [path for path in drawn(whole) if box(path)[0] == pytest.approx(0.5)]
    assert len(at_edge) == loops


@pytest.mark.parametrize(("fly", "loops"), [("non-slip loop", 1), ("improved clinch", 0)])
def test_a_loop_at_the_fly_reaches_the_other(fly: str, loops: int) -> None:
    whole = recipe(section("9 ft", "0.012 in"), butt="none", fly=fly)
    at_edge = [path for path in drawn(whole) if box(path)[2] == pytest.approx(WIDTH - 0.5)]
    assert len(at_edge) == loops


def test_bare_ends_have_no_mark() -> None:
    assert drawn(recipe(section("9 ft", "0.012 in"), butt="none", fly="none")) == []


def test_a_dropper_is_as_long_as_it_hangs_and_hangs_free() -> None:
    of = plotted(joined("blood", dropper="6 in"))
    branch = next(path for path in marks(of) if path.fill is None and not strokes(path))
    (start, _), *_, (end, low) = points(branch)
    assert start == pytest.approx(WIDTH / 2)
    assert end - start == pytest.approx(6 * 25.4 * of.per_mm)
    assert low == pytest.approx(of.half(WIDTH / 2) + 1.3 + 3.0)
    assert reach(of) >= low


def test_a_bite_guard_is_underlined_and_looks_no_thicker_for_it() -> None:
    guarded, bare = drawn(joined("blood", part="bite guard")), drawn(joined("blood", part="tippet"))
    (line,) = [path for path in guarded if path not in bare]
    left, top, right, bottom = box(line)
    of = plotted(joined("blood"))
    assert (left, right) == pytest.approx((of.bands[1].x, of.end))
    assert (top, bottom) == pytest.approx((of.bands[1].from_thick / 2 + 1.0,) * 2)
    assert line.dash


def test_another_knot_at_a_joint_is_another_drawing() -> None:
    names = ("blood", "double surgeon's", "ring joint", "loop to loop")
    assert len({tuple(drawn(joined(name))) for name in names}) == len(names)


@given(leaders(), st.floats(127, 540), st.sampled_from([1.0, 1.5, 2.0]))
def test_no_mark_leaves_the_room_that_the_drawing_says_it_takes(
    of: Leader, width: float, size: float
) -> None:
    along = plot(told(of), scale(size), width, 9.0 * size)
    for path in marks(along):
        for x, y in points(path):
            assert -path.line / 2 - 1e-6 <= x <= width + path.line / 2 + 1e-6
            assert -rise(along) - 1e-6 <= y <= reach(along) + 1e-6
