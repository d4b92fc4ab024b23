"""Blocks for the columns of a card's sides: blocks and rooms in; each column's blocks out."""

from collections.abc import Callable, Sequence

from msgspec import Struct

from tagend.cards.faces.block import Block, TooSmall, beside, stacked
from tagend.layouts.paper.lengths import fits


class Grid(Struct, frozen=True):
    """How the sides of a card are parted: columns, their width and what lies between, in points."""

    count: int
    width: float
    gutter: float
    gap: float  # between two blocks of a column

    def block(self, columns: Sequence[Sequence[Block]]) -> Block:
        """Return columns of blocks as one block."""
        step = self.width + self.gutter
        return beside((stacked(column, self.gap) for column in columns), step)


class _Filling:
    """A column that is being filled."""

    def __init__(self, height: float) -> None:
        self.left = height
        self.blocks: list[Block] = []

    def take(self, block: Block, gap: float) -> bool:
        needed = block.height + (gap if self.blocks else 0.0)
        if not fits(needed, self.left):
            return False
        self.left -= needed
        self.blocks.append(block)
        return True


def flowed(
    groups: Sequence[Sequence[Block]], of: Grid, room: Callable[[int], float], most: int
) -> list[list[list[Block]]] | None:
    """Return for each side its columns, every block in the first one that has room for it.

    No block of a group stands before the one above it. `room` gives the height of a side, by its
    number from 0; None where more than `most` sides would be taken. Raises `TooSmall` for a block
    that is higher than any side.
    """
    columns: list[_Filling] = []

    def place(block: Block, first: int) -> int | None:
        tried, at_first = first, len(columns)
        while True:
            if tried == len(columns):
                number = tried // of.count
                if number >= most:
                    return None
                columns.extend(_Filling(room(number)) for _ in range(of.count))
            if columns[tried].take(block, of.gap):
                return tried
            tried += 1
            if tried > at_first + _TRIED * of.count:
                raise TooSmall("a part of it is higher than the space there is")

    for group in groups:
        first = 0
        for block in group:
            at = place(block, first)
            if at is None:
                return None
            first = at
    sides = [columns[first : first + of.count] for first in range(0, len(columns), of.count)]
    return [[column.blocks for column in side if column.blocks] for side in sides]


_TRIED = 3  # empty sides, after which a block that found no room finds none
