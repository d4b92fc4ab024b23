"""The section diagram: a leader in; its pieces to scale, with their dimension line, out.

Lengths are to scale; thickness is exaggerated over that scale.
"""

from collections.abc import Iterator, Sequence

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.dimensions import dimension_line, lengths_above
from tagend.cards.faces.marks import marks, reach, rise
from tagend.cards.faces.plot import Plot, plot, plots_alike
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Item, shifted

_ROOM = 9.0  # points at factor 1, for the thickest strand
_LOW_ROOM = 6.0
_BELOW = 1.4  # points at factor 1, from the strand to the dimension line
_HANGS = 0.25  # of a figure below its baseline, in type sizes


def diagrams(told: Told, scale: Scale, width: float) -> Iterator[Block]:
    """Yield drawings to stand by a table, the higher one first: with lengths above, and without."""
    full = plot(told, scale, width, _ROOM * scale.factor)
    yield _strand(full, lengths_above(full, -rise(full)))
    low = plot(told, scale, width, _LOW_ROOM * scale.factor)
    yield _strand(low, Block((), rise(low)))


def diagrams_alike(all_told: Sequence[Told], scale: Scale, width: float) -> list[Block]:
    """Return a drawing of each leader, all to one scale, with lengths above."""
    plots = plots_alike(all_told, scale, width, _ROOM * scale.factor)
    return [_strand(each, lengths_above(each, -rise(each))) for each in plots]


def _strand(plotted: Plot, above: Block) -> Block:
    """Return what stands above the strand, the strand itself and its dimension line."""
    line = dimension_line(plotted, reach(plotted) + _BELOW * plotted.size)
    hangs = _HANGS * plotted.scale.small

    def items() -> tuple[Item, ...]:
        bands = (band.outline for band in plotted.bands)
        strand = (*above.items, *bands, *marks(plotted), *line.items)
        return shifted(strand, 0, above.height)

    return Block(items, above.height + line.height + hangs)
