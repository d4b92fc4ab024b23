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
_HANGS = 0.25  # of a figure below its baseline, in type sizes
_TO_KEY = 0.33  # from the figures to the key, in type sizes


def diagram(told: Told, scale: Scale, width: float) -> Block:
    """Return the leader drawn along the width, with all that can be said. Raises `TooWide`."""
    full = plot(told, scale, width, _ROOM * scale.factor)
    strand = _strand(full, lengths_above(full, -rise(full)))
    return stacked([strand, key(full, _note(full))], _TO_KEY * scale.small)


def low_diagrams(told: Told, scale: Scale, width: float) -> Iterator[Block]:
    """Yield drawings to stand by a table, the higher one first: with lengths above, and without.

    The table names each line, so that none is told apart by a pattern: a card's black is for the
    thin strand of a knot.
    """
    full, low = (plot(told, scale, width, room * scale.factor) for room in (_ROOM, _LOW_ROOM))
    yield _strand(full, lengths_above(full, -rise(full)), plain=True)
    yield _strand(low, Block((), rise(low)), plain=True)


def _note(plotted: Plot) -> str:
    """Return the exaggeration, before that with what the leader measures without its tippet."""
    told, base_length = plotted.told, plotted.leader.base
    thickness = told.wording.say("thickness", factor=plotted.factor)
    if not base_length.high_mm:
        return thickness
    base = told.wording.say("base", length=told.span(base_length))
    return f"{base} · {thickness}"


def _strand(plotted: Plot, above: Block, *, plain: bool = False) -> Block:
    """Return what stands above the strand, the strand itself and its dimension line."""
    line = dimension_line(plotted, reach(plotted) + _BELOW * plotted.size)
    hangs = _HANGS * plotted.scale.small if plain else 0.0  # a key below has room for it
    items = (*above.items, *_bands(plotted, plain=plain), *marks(plotted), *line.items)
    return Block(shifted(items, 0, above.height), above.height + line.height + hangs)


def _bands(plotted: Plot, *, plain: bool) -> Iterator[Path]:
    for band, piece in zip(plotted.bands, plotted.leader.pieces, strict=True):
        yield from patterned(band, "outline" if plain else piece.material.pattern)
