"""A strand to sell by: a plotted leader in; it drawn, with what each section is, out.

Lengths are bold. A unit or a material is said once, and again only where another came between.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from tagend.cards.faces.block import DROP, LEADING, Block, Scale, small_lines, stacked
from tagend.cards.faces.captions import without_overlap
from tagend.cards.faces.marks import RISE, marks, reach, rise
from tagend.cards.faces.plot import Plot
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Path, segment, shifted
from tagend.layouts.paper.text import SetLine, set_line

_APART = 0.7  # the least between two sections' figures, in type sizes
_NEAR = 0.25  # from the drawing to its figures, in type sizes
_FAR = 0.7  # the same where figures had to move: their leads slant
_MOVED = 0.2  # of their width; figures moved further get a lead
_CLEAR = 0.8  # points, between a lead and what it leads to
_THIN = 0.35  # points


class _Figures(NamedTuple):
    """What is said of a section, line by line, and where the middle of that came to stand."""

    lines: tuple[SetLine, ...]
    x: float = 0.0

    @property
    def width(self) -> float:
        return max(line.width for line in self.lines)


def counter_strand(plotted: Plot, width: float) -> Block:
    """Return the drawing with its figures, or over a list of its sections where they are too many.

    Raises `TooWide`.
    """
    strand = _strand(plotted)
    figures = _placed(plotted, width)
    if figures is None:
        gap = _NEAR * plotted.scale.small
        return stacked([strand, _listed(plotted.told, plotted.scale, width)], gap)
    size = plotted.scale.small
    moved = [
        abs(each.x - band.middle) > _MOVED * each.width
        for each, band in zip(figures, plotted.bands, strict=True)
    ]
    top = strand.height + (_FAR if any(moved) else _NEAR) * size
    rows = (
        item
        for each in figures
        for row, line in enumerate(each.lines)
        for item in line.at(each.x, top + (row * LEADING + DROP) * size, "centre")
    )
    leads = (_lead(plotted, place, figures[place].x, top) for place, far in enumerate(moved) if far)
    deep = max(len(each.lines) for each in figures) * LEADING * size
    return Block((*strand.items, *leads, *rows), top + deep)


def _strand(plotted: Plot) -> Block:
    """Return the strand alone, from its highest sign to its lowest."""
    above = rise(plotted)
    drawn = (*(band.outline for band in plotted.bands), *marks(plotted))
    return Block(shifted(drawn, 0, above), above + reach(plotted))


def _lead(plotted: Plot, place: int, x: float, top: float) -> Path:
    """Return a line from a section to its figures."""
    middle = plotted.bands[place].middle
    strand = rise(plotted) + plotted.half(middle) + RISE + _CLEAR
    return Path(segment(middle, strand, x, top - _CLEAR), _THIN)


def _placed(plotted: Plot, width: float) -> list[_Figures] | None:
    """Return the figures as near below their sections as can be; None where they cannot fit."""
    scale = plotted.scale
    bold, medium, size = scale.bold, scale.medium, scale.small
    figures = [
        _Figures((set_line(length, bold, size), *(set_line(each, medium, size) for each in more)))
        for length, *more in _lines(plotted.told)
    ]
    gap = _APART * scale.small
    wishes = [band.middle + gap / 2 for band in plotted.bands]
    middles = without_overlap(wishes, [each.width + gap for each in figures], width + gap)
    if middles is None:
        return None
    return [each._replace(x=x - gap / 2) for each, x in zip(figures, middles, strict=True)]


def _lines(told: Told) -> Iterator[list[str]]:
    """Yield each section's length, diameter and material, units and materials where they change."""
    pieces, wording = told.leader.pieces, told.wording
    lengths = [f"{told.span_number(piece.finished)} {told.leader.unit}" for piece in pieces]
    quantities = (lengths, [told.along(piece) for piece in pieces])
    last = ""
    for piece, *said in zip(pieces, *map(_units_once, quantities), strict=True):
        material = piece.section.material
        said += [wording.material(material)] if material != last else []
        said += [wording.say("bite_guard")] if piece.part == "bite guard" else []
        last = material
        yield said


def _units_once(quantities: Sequence[str]) -> Iterator[str]:
    """Yield quantities without a unit that the last one with a unit has too; an X size has none."""
    last = ""
    for quantity in quantities:
        number, _, unit = quantity.rpartition(" ")
        yield number if number and unit == last else quantity
        last = unit if number else last


def _listed(told: Told, scale: Scale, width: float) -> Block:
    """Return the sections in lines of text."""
    say = told.wording.say
    said = (
        say("so_much_of", amount=told.span(piece.finished), strand=told.thickness(piece))
        for piece in told.leader.pieces
    )
    return small_lines([" · ".join(said)], scale, width)
