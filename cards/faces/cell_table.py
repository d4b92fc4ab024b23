"""A table of cells: rows of words and a width in; the rows in aligned columns, as a block, out."""

from collections.abc import Sequence
from itertools import accumulate

from tagend.cards.faces.block import DROP, LEADING, Block, Scale, beside, stacked, text_block
from tagend.layouts.paper.text import set_line

_GAP = 1.0  # between two columns, in type sizes
_BETWEEN = 3.0  # between two halves
_LONG = 6  # rows; a longer table may stand in two halves


def cell_table(rows: Sequence[Sequence[str]], scale: Scale, width: float) -> Block:
    """Return rows of as many cells each, every column as wide as it must be.

    The first column breaks its lines where the others leave it too little room. A long table
    stands in two halves side by side where there is room. Raises `TooWide`.
    """
    size = scale.small
    gap = _GAP * size
    widths = [
        max(set_line(cell, scale.medium, size).width for cell in column)
        for column in zip(*rows, strict=True)
    ]
    others = sum(widths[1:]) + gap * len(widths[1:])
    whole = widths[0] + others
    first = min(widths[0], width - others)
    ends = accumulate((first, *widths[1:]), lambda x, each: x + gap + each)
    starts = [end + gap for end in ends]
    blocks = [_row(row, starts, scale, first) for row in rows]
    if len(rows) > _LONG and 2 * whole + _BETWEEN * size <= width:
        half = -(-len(rows) // 2)
        halves = (stacked(blocks[:half]), stacked(blocks[half:]))
        return beside(halves, whole + _BETWEEN * size)
    return stacked(blocks)


def _row(row: Sequence[str], starts: Sequence[float], scale: Scale, first: float) -> Block:
    """Set the first cell within its width, and each other one at its start."""
    size = scale.small
    block = text_block(row[0], scale.medium, size, first)
    items = (
        item
        for cell, x in zip(row[1:], starts, strict=False)
        for item in set_line(cell, scale.medium, size).at(x, DROP * size)
    )
    return Block((*block.items, *items), block.height or LEADING * size)
