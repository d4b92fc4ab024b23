"""Blocks for the columns of a card's sides: blocks and rooms in; each column's blocks out."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tagend.cards.faces.block import Block, TooSmall, beside, stacked
from tagend.layouts.paper.lengths import fits


@dataclass(frozen=True, slots=True)
class Columns:
    """How the sides of a card are parted: columns, their width and what lies between, in points."""

    count: int
    width: float
    gutter: float
    gap: float  # between two blocks of a column

    def block(self, columns: Sequence[Sequence[Block]]) -> Block:
        """Return columns of blocks as one block."""
        step = self.width + self.gutter
        return beside((stacked(column, self.gap) for column in columns), step)


@dataclass(slots=True)
class _Column:
    """A column that is being filled."""

    left: float
    blocks: list[Block]

    def take(self, block: Block, gap: float) -> bool:
        needed = block.height + (gap if self.blocks else 0.0)
        if not fits(needed, self.left):
            return False
        self.left -= needed
        self.blocks.append(block)
        return True


def flowed(
    blocks: Sequence[Block], of: Columns, room: Callable[[int], float], most: int
) -> list[list[list[Block]]] | None:
    """Return for each side its columns, every block in the first one that has room for it.

    `room` gives the height of a side, by its number from 0; None where more than `most` sides would
    be taken. Raises `TooSmall` for a block that is higher than any side.
    """
    sides: list[list[_Column]] = []
    for block in blocks:
        held = any(column.take(block, of.gap) for side in sides for column in side)
        while not held:
            if len(sides) >= most:
                return None
            side = [_Column(room(len(sides)), []) for _ in range(of.count)]
            sides.append(side)
            held = side[0].take(block, of.gap)
            if not held and len(sides) > _TRIED:
                raise TooSmall("a part of it is higher than the space there is")
    return [[column.blocks for column in side if column.blocks] for side in sides]


_TRIED = 12  # sides, after which a block that found no room finds none
