"""The whole drawing as numbers: what holds for leaders of any lengths side by side."""

from hypothesis import example, given, settings
from hypothesis import strategies as st

from tagend.cards.faces.block import Block
from tagend.cards.faces.diagram import diagrams
from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import wording_in
from tagend.layouts.paper.face import MM, Face, Path, TextRun
from tests.drawable import leaders
from tests.seen import faults, glyphs, paths, points, runs, words
from tests.tieable import counts, seeds, tieable
from tests.told import scale, told
from tests.written import leader, recipe, section

WIDTH = 226.0  # points, of an ID-1 card within its inset: (85.6 - 6) mm

widths = st.floats(45 * MM, 190 * MM)
factors = st.sampled_from([1.0, 1.3, 1.5, 2.0])


def row(*lengths: int) -> Leader:
    """Return a leader of pieces of so many inches, each a little thinner than the one above."""
    pieces = [section(f"{length} in", f"0.0{30 - 2 * place} in")
              for place, length in enumerate(lengths)]  # fmt: skip
    return leader(recipe(*pieces, butt="perfection loop", fly="non-slip loop"))


THREE = leader(
    recipe(
        section("40 in", "0.020 in"),
        section("20 in", "0.015 in"),
        section("20 in", "0.010 in", "fluorocarbon"),
    )
)


def drawn(block: Block, width: float) -> Face:
    return Face("diagram", width, block.height, block.items)


def drawings(of: Leader, width: float = WIDTH, factor: float = 1.0) -> list[Face]:
    """Return the drawings, the fullest first."""
    of_it = told(of), scale(factor), width
    return [drawn(block, width) for block in diagrams(*of_it)]


def fills(face: Face) -> list[Path]:
    """Return the shapes that stand for something: bands, knots, rings, loops and swatches."""
    return [path for path in paths(face) if path.fill is not None]


def is_apart(path: Path, run: TextRun) -> bool:
    """Say whether the box around a path and that around a text have no point in common."""
    left, top, right, bottom = glyphs(run)
    xs, ys = [x for x, _ in points(path)], [y for _, y in points(path)]
    return min(xs) >= right or max(xs) <= left or min(ys) >= bottom or max(ys) <= top


@given(leaders(), widths, factors)
@example(row(3, 60), WIDTH, 1.0)
@example(row(60, 3), WIDTH, 1.0)
@example(row(60, 3, 3, 3, 60), WIDTH, 1.0)
@example(row(60, 3, 60), 45 * MM, 2.0)
@example(row(1, 72, 1, 72, 1, 72), WIDTH, 1.0)
@example(row(72, *[1] * 11), WIDTH, 1.0)
@settings(max_examples=150, deadline=None)
def test_nothing_stands_on_anything_else_however_short_a_section_is(
    of: Leader, width: float, factor: float
) -> None:
    for face in drawings(of, width, factor):
        assert faults(face, 0) == []
        for run in runs(face):
            assert all(is_apart(path, run) for path in fills(face)), run.text
            assert run.size >= 7.6 * factor


@given(seeds, counts, widths, factors)
@settings(max_examples=40, deadline=None)
def test_leaders_that_people_tie_are_drawn_without_fault(
    seed: int, count: int | None, width: float, factor: float
) -> None:
    for face in drawings(tieable(seed, count), width, factor):
        assert faults(face, 0) == []


@given(leaders(), widths)
@settings(max_examples=40, deadline=None)
def test_drawings_by_a_table_are_lower_and_tell_no_line_apart(of: Leader, width: float) -> None:
    faces = drawings(of, width)
    heights = [face.height for face in faces]
    assert heights == sorted(heights, reverse=True)
    for face in faces:
        assert "thickness" not in words(face)
        assert 0.0 not in {path.fill for path in paths(face)}  # black is for a knot's thin strand


def test_a_decimal_comma_is_used_where_it_is_asked_for() -> None:
    of = leader(recipe(section("80.5 cm", "0.43 mm"), section("50 cm", "0.3 mm")))
    comma = wording_in("en", ",")
    block, _ = diagrams(told(of, comma), scale(), WIDTH)
    shown = words(drawn(block, WIDTH))
    assert "130,5 cm" in shown
    assert "80,5" in shown
    assert "." not in shown


@given(leaders(), widths)
@settings(max_examples=30, deadline=None)
def test_everything_is_black_on_white(of: Leader, width: float) -> None:
    for face in drawings(of, width):
        assert {path.grey for path in paths(face)} == {0.0}
        assert {path.fill for path in paths(face)} <= {None, 0.0, 1.0}
        assert all(path.line >= 0.25 for path in paths(face) if path.line)  # thinner lines vanish
