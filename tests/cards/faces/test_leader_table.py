from itertools import pairwise
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.columns import columns
from tagend.cards.faces.leader_table import Beside, leader_table, needed_width
from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.fonts import CAP_HEIGHT
from tagend.layouts.paper.face import Face, TextRun
from tests.seen import SLACK, faults, glyphs, paths, points, runs
from tests.tieable import counts, seeds, tieable
from tests.told import scale, told
from tests.written import leader, recipe, section

SCALE = scale()
THREE = leader(
    recipe(
        section("46 1/2 in", "0.023 in", "hard nylon", "25 lb", knot="blood"),
        section("8 in", "0.017 in", "hard nylon", "13 lb", knot="triple surgeon's"),
        section("30 3/4 in", "0.010 in", "fluorocarbon", "8.5 lb"),
        butt="perfection loop",
        fly="clinch",
    )
)


BLOOD = Told(THREE, ENGLISH).joint(THREE.joints[0])

besides = st.sampled_from(get_args(Beside))


def face(block: Block, width: float) -> Face:
    return Face("table", width, block.height, block.items)


def whole(of: Leader, width: float, size: Scale = SCALE, beside: Beside = "loops and laps") -> Face:
    rows = leader_table(told(of), size, width, beside)
    return face(rows.part(0, len(of.pieces)), width)


def found(of: Face, text: str) -> TextRun:
    """Return the leftmost run of a text: a lap at the right may have a section's number."""
    return min((run for run in runs(of) if run.text == text), key=lambda run: run.x)


def middle(run: TextRun) -> float:
    """Return the height in the middle of its capitals."""
    return run.y - CAP_HEIGHT * run.size / 2


def test_a_row_stands_below_the_other_and_a_knot_on_their_edge() -> None:
    card = whole(THREE, 300)
    top, pitch = 10.5, 11.9  # a heading of 1.4 × 7.5; rows of 4.2 mm
    for place, number in enumerate(("1", "2", "3")):
        assert middle(found(card, number)) == pytest.approx(top + (place + 0.5) * pitch)
    knots = ("perfection loop 3/4 in", BLOOD, "triple surgeon’s", "clinch")
    for place, knot in enumerate(knots):
        assert middle(found(card, knot)) == pytest.approx(top + place * pitch)


def test_a_rule_leads_to_each_knot_from_the_left_edge() -> None:
    card = whole(THREE, 300)
    knots = [found(card, name) for name in ("perfection loop 3/4 in", BLOOD, "triple surgeon’s")]
    for rule, knot in zip(paths(card), knots, strict=False):
        (left, y), (right, end) = points(rule)
        assert (left, y) == (0, end)
        assert y == pytest.approx(middle(knot))
        assert knot.x - knot.size < right < knot.x


def test_all_cells_of_a_row_share_a_line_through_their_middles() -> None:
    card = whole(THREE, 300)
    row = [found(card, text) for text in ("2", "0.017", "13", "8")]
    assert {round(middle(run), 6) for run in row} == {round(10.5 + 1.5 * 11.9, 6)}


def test_wholes_are_aligned_and_fractions_hang() -> None:
    card = whole(THREE, 300)
    wholes = [found(card, text) for text in ("46", "8", "30")]
    edges = [run.x + run.width for run in wholes]
    assert edges == pytest.approx([edges[0]] * 3)
    hanging = [run for run in runs(card) if run.text in ("1/2", "3/4") and run.size == SCALE.body]
    assert [run.x for run in hanging] == pytest.approx([hanging[0].x] * 2)
    assert hanging[0].x > edges[0]


def test_the_columns_share_the_free_width() -> None:
    slim, wide = whole(THREE, 250), whole(THREE, 250 + 60)
    count = len(list(columns(told(THREE), SCALE)))
    moved = found(wide, "clinch").x - found(slim, "clinch").x
    assert moved == pytest.approx(60)  # the knots stay at the right edge
    second = found(wide, "line").x - found(slim, "line").x
    assert second == pytest.approx(60 / count)  # each gap takes an equal part


def test_the_needed_width_grows_with_the_type() -> None:
    one = needed_width(told(THREE), SCALE, "loops and laps")
    assert needed_width(told(THREE), scale(1.6), "loops and laps") == pytest.approx(1.6 * one)


def test_a_table_may_go_on_at_any_row_under_the_knot_above_it() -> None:
    card = face(leader_table(told(THREE), SCALE, 300, "loops and laps").part(1, 3), 300)
    texts = [run.text for run in runs(card)]
    assert "1" not in texts
    assert {"2", "3", "CUT, in"} <= set(texts)
    assert middle(found(card, BLOOD)) == pytest.approx(10.5)  # at the heading's lower edge


@given(seeds, counts, st.sampled_from([1.0, 1.3, 1.6]), st.floats(0, 200), besides)
@settings(max_examples=60, deadline=None)
def test_every_cell_is_inside_and_none_on_another(
    seed: int, count: int | None, factor: float, more: float, beside: Beside
) -> None:
    of = tieable(seed, count)
    size = scale(factor)
    width = needed_width(told(of), size, beside) + more
    assert faults(whole(of, width, size, beside), 0) == []


def test_a_narrow_table_leaves_loops_and_then_laps_to_the_head() -> None:
    tables = [whole(THREE, 300, SCALE, beside) for beside in get_args(Beside)]
    assert found(tables[0], "perfection loop 3/4 in")
    assert found(tables[1], "perfection loop")
    heads = [any("lap" in run.text for run in runs(table)) for table in tables]
    assert heads == [True, True, False]
    widths = [needed_width(told(THREE), SCALE, beside) for beside in get_args(Beside)]
    assert widths == sorted(widths, reverse=True)


@given(seeds, counts, besides)
@settings(max_examples=40, deadline=None)
def test_the_cells_of_each_row_stand_apart_and_left_of_the_knots(
    seed: int, count: int | None, beside: Beside
) -> None:
    of = tieable(seed, count)
    width = needed_width(told(of), SCALE, beside)
    rows = leader_table(told(of), SCALE, width, beside).rows
    assert len(rows) == len(of.pieces)
    for row in rows:
        *cells, knot = sorted(glyphs(run) for run in runs(face(row, width)) if run.text)
        assert cells[0][0] >= 0
        assert all(left[2] <= right[0] + SLACK for left, right in pairwise([*cells, knot]))
