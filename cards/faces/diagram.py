"""The section diagram: a leader in; its pieces to scale, told apart in black alone, out.

Lengths are to scale; thickness is exaggerated over that scale by the factor that it prints.
"""

from collections.abc import Iterator

from tagend.cards.faces.block import Block, Scale, stacked
from tagend.cards.faces.dimensions import dimension_line, lengths_above
from tagend.cards.faces.key import key
from tagend.cards.faces.marks import marks, reach, rise
from tagend.cards.faces.pattern import patterned
from tagend.cards.faces.plot import Plot, plot
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Path, shifted

_ROOM = 9.0  # points at factor 1, for the thickest strand
_LOW_ROOM = 6.0
_BELOW = 1.4  # points at factor 1, from the strand to the dimension line
_TO_KEY = 0.33  # from the figures to the key, in type sizes


def diagram(told: Told, scale: Scale, width: float) -> Block:
    """Return the leader drawn along the width, with all that can be said. Raises `TooWide`."""
    return next(diagrams(told, scale, width))


def diagrams(told: Told, scale: Scale, width: float) -> Iterator[Block]:
    """Yield the drawing, and lower ones to stand by a table of the lengths.

    The first has the length of each piece above it, the last leaves out the base too. Raises
    `TooWide`.
    """
    full, low = (plot(told, scale, width, room * scale.factor) for room in (_ROOM, _LOW_ROOM))
    strand = _strand(full, lengths_above(full, -rise(full)))
    yield _keyed(strand, key(full, _notes(full)[0]), scale)
    strand = _strand(low, Block((), rise(low)))
    for note in _notes(low):
        yield _keyed(strand, key(low, note), scale)


def _keyed(strand: Block, names: Block, scale: Scale) -> Block:
    return stacked([strand, names], _TO_KEY * scale.small)


def _notes(plotted: Plot) -> tuple[str, ...]:
    """Return the exaggeration, before that with what the leader measures without its tippet."""
    told, base_length = plotted.told, plotted.leader.base
    thickness = told.wording.say("thickness", factor=plotted.factor)
    if not base_length.high_mm:
        return (thickness,)
    base = told.wording.say("base", length=told.span(base_length))
    return f"{base} · {thickness}", thickness


def _strand(plotted: Plot, above: Block) -> Block:
    """Return what stands above the strand, the strand itself and its dimension line."""
    line = dimension_line(plotted, reach(plotted) + _BELOW * plotted.size)
    items = (*above.items, *_bands(plotted), *marks(plotted), *line.items)
    return Block(shifted(items, 0, above.height), above.height + line.height)


def _bands(plotted: Plot) -> Iterator[Path]:
    for band, piece in zip(plotted.bands, plotted.leader.pieces, strict=True):
        yield from patterned(band, piece.material.pattern)
