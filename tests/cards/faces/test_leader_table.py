from itertools import pairwise
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.columns import columns
from tagend.cards.faces.leader_table import Knots, leader_table, needed_widths, table_height
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


BLOOD = Told(THREE, ENGLISH).tied(1)

ways = st.sampled_from(get_args(Knots))


def face(block: Block, width: float) -> Face:
    return Face("table", width, block.height, block.items)


def whole(of: Leader, width: float, size: Scale = SCALE, way: Knots = "beside") -> Face:
    rows = leader_table(told(of), size, width, way)
    return face(rows.part(0, len(of.pieces)), width)


def found(of: Face, text: str) -> TextRun:
    """Return the leftmost run of a text: a lap at the right may have a section's number."""
    return min((run for run in runs(of) if run.text == text), key=lambda run: run.x)


def middle(run: TextRun) -> float:
    """Return the height in the middle of its capitals."""
    return run.y - CAP_HEIGHT * run.size / 2


def test_a_row_stands_below_the_other_and_a_knot_on_their_edge() -> None:
    card = whole(THREE, 300)
    top, pitch = 11.4, 11.9  # a heading of 1.5 × 7.6; rows of 4.2 mm
    for place, number in enumerate(("1", "2", "3")):
        assert middle(found(card, number)) == pytest.approx(top + (place + 0.5) * pitch)
    knots = ("perfection loop 3/4 in", BLOOD, "triple surgeon’s", "clinch")
    for place, knot in enumerate(knots):
        assert middle(found(card, knot)) == pytest.approx(top + place * pitch)


def test_a_rule_leads_to_each_knot_from_the_left_edge() -> None:
    card = whole(THREE, 300)
    knots = [found(card, name) for name in ("perfection loop 3/4 in", BLOOD, "triple surgeon’s")]
    rules = [rule for rule in paths(card) if points(rule)[0][0] == 0]
    for rule, knot in zip(rules, knots, strict=False):
        (_, y), (right, end) = points(rule)
        assert y == end
        assert (rule.line, rule.grey) == (0.3, 0)
        assert y == pytest.approx(middle(knot))
        assert knot.x - knot.size < right < knot.x


def test_all_cells_of_a_row_share_a_line_through_their_middles() -> None:
    card = whole(THREE, 300)
    row = [found(card, text) for text in ("2", ".017", "13")]
    assert {round(middle(run), 6) for run in row} == {round(11.4 + 1.5 * 11.9, 6)}


def test_wholes_are_aligned_and_fractions_hang() -> None:
    card = whole(THREE, 300)
    wholes = [found(card, text) for text in ("46", "30")]
    edges = [run.x + run.width for run in wholes]
    assert edges == pytest.approx([edges[0]] * 2)
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
    one = needed_widths(told(THREE), SCALE)["beside"]
    assert needed_widths(told(THREE), scale(1.6))["beside"] == pytest.approx(1.6 * one)


def test_a_table_may_go_on_at_any_row_under_the_knot_above_it() -> None:
    card = face(leader_table(told(THREE), SCALE, 300, "beside").part(1, 3), 300)
    texts = [run.text for run in runs(card)]
    assert "1" not in texts
    assert {"2", "3", "CUT, in"} <= set(texts)
    assert middle(found(card, BLOOD)) == pytest.approx(11.4)  # at the heading's lower edge


@given(seeds, counts, st.sampled_from([1.0, 1.3, 1.6]), st.floats(0, 200), ways)
@settings(max_examples=60, deadline=None)
def test_every_cell_is_inside_and_none_on_another(
    seed: int, count: int | None, factor: float, more: float, way: Knots
) -> None:
    of = tieable(seed, count)
    size = scale(factor)
    width = needed_widths(told(of), size)[way] + more
    card = whole(of, width, size, way)
    assert faults(card, 0) == []
    assert card.height == pytest.approx(table_height(told(of), size, way))


def test_knots_between_the_rows_are_narrower_and_higher() -> None:
    sizes = [
        (needed_widths(told(THREE), SCALE)[way], table_height(told(THREE), SCALE, way))
        for way in get_args(Knots)
    ]
    assert sizes[0][0] > sizes[1][0]
    assert sizes[0][1] < sizes[1][1]
    card = whole(THREE, 300, SCALE, "between")
    order = ["perfection loop 3/4 in", "1", BLOOD, "2", "triple surgeon’s", "3", "clinch"]
    heights = [found(card, text).y for text in order]
    assert heights == sorted(heights)


@given(seeds, counts)
@settings(max_examples=40, deadline=None)
def test_the_cells_of_each_row_stand_apart_and_left_of_the_knots(
    seed: int, count: int | None
) -> None:
    of = tieable(seed, count)
    width = needed_widths(told(of), SCALE)["beside"]
    rows = leader_table(told(of), SCALE, width, "beside").rows
    assert len(rows) == len(of.pieces)
    for row in rows:
        *cells, knot = sorted(glyphs(run) for run in runs(face(row, width)) if run.text)
        assert cells[0][0] >= 0
        assert all(left[2] <= right[0] + SLACK for left, right in pairwise([*cells, knot]))
