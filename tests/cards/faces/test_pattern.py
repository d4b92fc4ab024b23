from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.pattern import Band, patterned
from tagend.cards.practice.materials import Pattern
from tagend.layouts.paper.face import Path
from tests.seen import points

PATTERNS: tuple[Pattern, ...] = get_args(Pattern)
LONG = Band(10, 50, 100, 8, 4)

bands = st.builds(
    Band,
    x=st.floats(0, 300),
    y=st.floats(0, 100),
    length=st.floats(0.01, 300),
    from_thick=st.floats(0.01, 20),
    to_thick=st.floats(0.01, 20),
)


def test_the_outline_tapers_from_one_thickness_to_the_other() -> None:
    (edge,) = patterned(LONG, "outline")
    assert points(edge) == [(10, 46), (110, 48), (110, 52), (10, 54)]  # 50 ± 8 / 2, 50 ± 4 / 2
    assert (edge.fill, edge.grey) == (1.0, 0.0)


@given(bands, st.sampled_from(PATTERNS))
def test_no_stroke_leaves_its_band(band: Band, pattern: Pattern) -> None:
    for path in patterned(band, pattern):
        for x, y in points(path):
            assert band.x - 1e-6 <= x <= band.x + band.length + 1e-6
            assert abs(y - band.y) <= band.half(x) + 1e-6


@given(bands, st.sampled_from(PATTERNS))
def test_nothing_empty_is_drawn(band: Band, pattern: Pattern) -> None:
    assert all(path.steps for path in patterned(band, pattern))


@pytest.mark.parametrize("pattern", [name for name in PATTERNS if name not in ("solid", "outline")])
def test_a_band_too_short_for_a_stroke_is_an_outline(pattern: Pattern) -> None:
    short = Band(0, 0, 0.5, 6, 6)
    edge, *strokes = patterned(short, pattern)
    assert edge.steps == short.outline
    assert not strokes or "core" in pattern  # a core has no spacing to keep


def test_no_two_patterns_look_alike() -> None:
    drawn: dict[tuple[Path, ...], Pattern] = {}
    for pattern in PATTERNS:
        assert drawn.setdefault(patterned(LONG, pattern), pattern) == pattern


def test_every_pattern_is_black_and_white() -> None:
    for pattern in PATTERNS:
        for path in patterned(LONG, pattern):
            assert path.grey == 0.0
            assert path.fill in (None, 0.0, 1.0)


def test_hatching_leans_one_way_and_back_hatching_the_other() -> None:
    def slopes(pattern: Pattern) -> set[bool]:
        _, strokes = patterned(LONG, pattern)
        pairs = zip(points(strokes)[::2], points(strokes)[1::2], strict=True)
        return {(x2 - x1) * (y2 - y1) < 0 for (x1, y1), (x2, y2) in pairs}  # rises to the right

    assert slopes("hatch") == {True}
    assert slopes("back hatch") == {False}
    assert slopes("cross hatch") == {True, False}
