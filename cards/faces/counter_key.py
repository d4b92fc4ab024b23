"""The key of drawings to one scale: plotted leaders in; their patterns with names and notes out."""

from collections.abc import Sequence

from tagend.cards.faces.block import DROP, LEADING, Block, small_lines, stacked
from tagend.cards.faces.marks import underline
from tagend.cards.faces.pattern import Band, patterned
from tagend.cards.faces.plot import Plot
from tagend.cards.practice.materials import Pattern
from tagend.layouts.paper.face import Item, shifted
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, set_line

# In type sizes.
_SWATCH = 1.8  # across
_HIGH = 0.6  # of a swatch
_APART = 0.4  # from a swatch to its word
_GAP = 1.2  # from one word to the next swatch


def counter_key(plots: Sequence[Plot], width: float, *, with_codes: bool) -> Block:
    """Return the patterns with their materials, and how drawings and codes are read.

    Raises `TooWide`.
    """
    first = plots[0]
    scale, wording = first.scale, first.told.wording
    pieces = [piece for plotted in plots for piece in plotted.leader.pieces]
    patterns = {
        wording.material(piece.material.name): (piece.material.pattern, False) for piece in pieces
    }
    guards = [piece for piece in pieces if piece.part == "bite guard"]
    if guards:
        patterns[wording.say("bite_guard")] = (guards[0].material.pattern, True)
    swatches = [
        (_swatch(*looks, scale.small), set_line(name, scale.medium, scale.small))
        for name, looks in patterns.items()
    ]
    notes = [wording.say("counter_key", factor=first.factor)]
    notes += [wording.say("counter_codes")] if with_codes else []
    lines = [_line(line, scale.small) for line in _lines(swatches, scale.small, width)]
    return stacked([*lines, small_lines(notes, scale, width)])


_Entry = tuple[tuple[Item, ...], SetLine]  # a swatch and its word


def _lines(entries: Sequence[_Entry], size: float, width: float) -> list[list[_Entry]]:
    """Return the entries in their order on lines, each as full as it can be."""
    lines: list[list[_Entry]] = [[]]
    for entry in entries:
        taken = sum(_width(each, size) for each in (*lines[-1], entry)) - _GAP * size
        if lines[-1] and not fits(taken, width):
            lines.append([])
        lines[-1].append(entry)
    return lines


def _line(entries: Sequence[_Entry], size: float) -> Block:
    items: list[Item] = []
    x = 0.0
    for entry in entries:
        swatch, word = entry
        items += shifted(swatch, x, (DROP - CAP_HEIGHT / 2) * size)
        items += word.at(x + (_SWATCH + _APART) * size, DROP * size)
        x += _width(entry, size)
    return Block(tuple(items), LEADING * size)


def _width(entry: _Entry, size: float) -> float:
    return (_SWATCH + _APART + _GAP) * size + entry[1].width


def _swatch(pattern: Pattern, guard: bool, size: float) -> tuple[Item, ...]:
    """Return a short strand with its middle at y = 0."""
    high = _HIGH * size
    band = Band(x=0.0, y=0.0, length=_SWATCH * size, from_thick=high, to_thick=high)
    return (*patterned(band, pattern), *([underline(band)] if guard else []))
