from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    beside,
    filled,
    line_block,
    stack_height,
    stacked,
)
from tagend.fonts import OURS
from tagend.layouts.paper.face import Item, TextRun
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.text import set_line

heights = st.lists(st.integers(1, 40), min_size=1, max_size=20)


def texts(block: Block) -> list[TextRun]:
    return [item for item in block.items if isinstance(item, TextRun)]


def bare(height: float) -> Block:
    return Block((), height)


def test_a_line_stands_in_its_block() -> None:
    block = line_block(set_line("Sandbar", OURS.bold, 10))
    (run,) = texts(block)
    # 0.82 × 10 below the top; the next line 1.15 × 10 below that top
    assert (run.x, run.y, block.height) == (0, 8.2, 11.5)


def test_blocks_are_stacked_a_gap_apart() -> None:
    line = line_block(set_line("a", OURS.medium, 10))
    both = stacked([line, bare(5), line], 2)
    assert [run.y for run in texts(both)] == [8.2, 8.2 + 11.5 + 2 + 5 + 2]
    assert both.height == 11.5 + 2 + 5 + 2 + 11.5
    assert both.height == stack_height([line, bare(5), line], 2)


def test_a_block_is_not_set_before_it_is_printed() -> None:
    asked = []

    def items() -> tuple[Item, ...]:
        asked.append("once")
        return ()

    both = beside([stacked([Block(items, 7), bare(5)], 2)], 10)
    assert (both.height, asked) == (14, [])
    assert (both.items, asked) == ((), ["once"])


def test_nothing_has_no_height() -> None:
    assert stacked([], 3).height == 0
    assert stack_height([], 3) == 0


def test_panels_are_filled_one_after_the_other() -> None:
    # 40 + 3 + 57 = 100 fills the first to the brim
    panels = filled([bare(height) for height in (40, 57, 1, 96, 5)], 3, 100)
    assert [[block.height for block in panel] for panel in panels] == [[40, 57], [1, 96], [5]]


def test_a_block_higher_than_a_panel_is_refused() -> None:
    with pytest.raises(TooSmall):
        filled([bare(10), bare(101)], 0, 100)


@given(heights, st.integers(0, 10))
def test_no_block_is_lost_and_no_panel_overfull(given_heights: list[int], gap: int) -> None:
    blocks = [bare(height) for height in given_heights]
    panels = filled(blocks, gap, 50)
    assert [block for panel in panels for block in panel] == blocks
    assert all(stack_height(panel, gap) <= 50 for panel in panels)
    # No panel had room for the next one's first block: these are the fewest.
    for panel, after in pairwise(panels):
        assert stack_height([*panel, after[0]], gap) > 50


def test_the_smallest_type_of_the_scale_is_the_smallest_allowed() -> None:
    scale = Scale(1.0, OURS)
    assert min(scale.name, scale.cut, scale.body, scale.small) == scale.small == FLOOR


def test_a_scale_keeps_its_proportions() -> None:
    one, large = Scale(1.0, OURS), Scale(1.5, OURS, stretch=2)
    for size in ("name", "cut", "body", "small"):
        assert getattr(large, size) == pytest.approx(1.5 * getattr(one, size))
    assert large.pitch == pytest.approx(1.5 * 2 * one.pitch)
