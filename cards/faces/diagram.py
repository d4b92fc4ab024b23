"""The section diagram: a leader in; its pieces to scale, with their dimension line, out.

Lengths are to scale; thickness is exaggerated over that scale.
"""

from collections.abc import Iterator

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.dimensions import dimension_line, lengths_above
from tagend.cards.faces.marks import marks, reach, rise
from tagend.cards.faces.plot import Plot, plot
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import shifted

_ROOM = 9.0  # points at factor 1, for the thickest strand
_LOW_ROOM = 6.0
_BELOW = 1.4  # points at factor 1, from the strand to the dimension line
_HANGS = 0.25  # of a figure below its baseline, in type sizes


def diagrams(told: Told, scale: Scale, width: float) -> Iterator[Block]:
    """Yield drawings to stand by a table, the higher one first: with lengths above, and without."""
    full, low = (plot(told, scale, width, room * scale.factor) for room in (_ROOM, _LOW_ROOM))
    yield _strand(full, lengths_above(full, -rise(full)))
    yield _strand(low, Block((), rise(low)))


def _strand(plotted: Plot, above: Block) -> Block:
    """Return what stands above the strand, the strand itself and its dimension line."""
    line = dimension_line(plotted, reach(plotted) + _BELOW * plotted.size)
    hangs = _HANGS * plotted.scale.small
    items = (*above.items, *(band.outline for band in plotted.bands), *marks(plotted), *line.items)
    return Block(shifted(items, 0, above.height), above.height + line.height + hangs)
