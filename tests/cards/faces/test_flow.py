import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.block import Block, TooSmall
from tagend.cards.faces.flow import Grid, flowed
from tagend.layouts.paper.lengths import fits

HIGH = 100.0
TWO = Grid(2, 50.0, 10.0, 2.0)

groups = st.lists(st.lists(st.floats(1, HIGH), min_size=1, max_size=4), min_size=1, max_size=8)


def blocks(heights: list[float]) -> list[Block]:
    return [Block((), height) for height in heights]


@given(groups, st.integers(1, 3))
def test_all_blocks_find_place_within_their_columns(of: list[list[float]], count: int) -> None:
    columns = Grid(count, 50.0, 10.0, 2.0)
    sides = flowed([blocks(group) for group in of], columns, lambda _: HIGH, 99)
    assert sides is not None
    held = [block.height for side in sides for column in side for block in column]
    assert sorted(held) == sorted(height for group in of for height in group)
    for side in sides:
        assert len(side) <= count
        for column in side:
            assert fits(sum(b.height for b in column) + 2.0 * (len(column) - 1), HIGH)


@given(st.lists(st.floats(1, HIGH), min_size=2, max_size=9, unique=True))
def test_a_group_keeps_its_order(heights: list[float]) -> None:
    sides = flowed([[Block((), 90.0)], blocks(heights)], TWO, lambda _: HIGH, 99)
    assert sides is not None
    held = [block.height for side in sides for column in side for block in column]
    assert [height for height in held if height in heights and height != 90.0] == [
        height for height in heights if height != 90.0
    ]


def test_more_sides_than_allowed_are_none() -> None:
    assert flowed([blocks([90.0] * 5)], TWO, lambda _: HIGH, 2) is None


def test_a_block_higher_than_any_side_is_too_high() -> None:
    with pytest.raises(TooSmall):
        flowed([blocks([101.0])], TWO, lambda _: HIGH, 99)
