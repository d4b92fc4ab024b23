"""The key of a drawing: a plotted leader in; swatches with words and what else it says out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from tagend.cards.faces.block import Block, stacked
from tagend.cards.faces.captions import without_overlap
from tagend.cards.faces.marks import underline
from tagend.cards.faces.pattern import Band, patterned
from tagend.cards.faces.plot import Plot
from tagend.cards.practice.materials import Material
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Item, Path
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, break_lines

_SWATCH = 1.2  # across, in type sizes
_HEIGHT = 0.6  # of a swatch
_APART = 0.3  # from a swatch to its word
_GAP = 0.8  # from one word to the next swatch
_DROP = 0.25  # from a baseline to the end of its line
_BETWEEN = 0.15  # from one line to the next


@dataclass(frozen=True, slots=True)
class _Swatch:
    """What strands that look alike have in common."""

    material: Material
    guard: bool


@dataclass(frozen=True, slots=True)
class _KeyLine:
    """A line of words that wants its middle at a place, and what stands before it."""

    line: SetLine
    wish: float
    swatch: _Swatch | None = None

    @property
    def indent(self) -> float:
        return (_SWATCH + _APART) * self.line.size if self.swatch else 0.0

    @property
    def width(self) -> float:
        return self.indent + self.line.width


def key(plotted: Plot, note: str) -> Block:
    """Return the lines of the key, its materials by their pieces where there is room.

    The note stands at the right of the last line. Raises `TooWide`.
    """
    scale, width = plotted.scale, plotted.width
    notes = break_lines(note, scale.medium, scale.small, width)
    entries = [*_materials(plotted), *(_KeyLine(line, width) for line in notes)]
    gap = _GAP * scale.small
    high = (CAP_HEIGHT + _DROP) * scale.small
    blocks = (Block(tuple(_line(of, width, gap)), high) for of in _lines(entries, width, gap))
    return stacked(blocks, _BETWEEN * scale.small)


def _materials(plotted: Plot) -> Iterator[_KeyLine]:
    scale = plotted.scale
    room = plotted.width - (_SWATCH + _APART) * scale.small
    swatches = _swatches(plotted)
    for swatch, middle in swatches.items():
        known = _Swatch(swatch.material, guard=False) in swatches
        word = _word(swatch, plotted.told.wording, known=known)
        first, *more = break_lines(word, scale.medium, scale.small, room)
        yield _KeyLine(first, middle, swatch)
        yield from (_KeyLine(line, middle) for line in more)


def _word(swatch: _Swatch, wording: Wording, *, known: bool) -> str:
    """Return what it stands for; the material of a bite guard, where no other piece has that."""
    material = wording.material(swatch.material.name)
    if not swatch.guard:
        return material
    return wording.say("bite_guard") if known else wording.say("guard", strand=material)


def _swatches(plotted: Plot) -> dict[_Swatch, float]:
    """Return each swatch once, from the butt to the fly, and the middle of its first pieces."""
    swatches: dict[_Swatch, float] = {}
    looks = (_Swatch(p.material, p.part == "bite guard") for p in plotted.leader.pieces)
    places = zip(looks, plotted.bands, strict=True)
    for swatch, group in groupby(places, key=lambda place: place[0]):
        bands = [band for _, band in group]
        swatches.setdefault(swatch, (bands[0].x + bands[-1].end) / 2)
    return swatches


def _lines(entries: Sequence[_KeyLine], width: float, gap: float) -> list[list[_KeyLine]]:
    """Return the entries in their order on lines, each as full as it can be."""
    lines: list[list[_KeyLine]] = [[]]
    for entry in entries:
        taken = sum(other.width + gap for other in lines[-1])
        if lines[-1] and not fits(taken + entry.width, width):
            lines.append([])
        lines[-1].append(entry)
    return lines


def _line(entries: Sequence[_KeyLine], width: float, gap: float) -> Iterator[Item]:
    widths = [entry.width + gap for entry in entries]
    room = max(width + gap, sum(widths))  # which are equal but for the slack of a fit
    places = without_overlap([entry.wish + gap / 2 for entry in entries], widths, room)
    for entry, middle in zip(entries, places or (), strict=True):
        left = middle - gap / 2 - entry.width / 2
        if entry.swatch:
            yield from _drawn(entry.swatch, left, entry.line.size)
        yield from entry.line.at(left + entry.indent, CAP_HEIGHT * entry.line.size)


def _drawn(swatch: _Swatch, x: float, size: float) -> Iterator[Path]:
    thick, y = _HEIGHT * size, CAP_HEIGHT * size / 2
    band = Band(x=x, y=y, length=_SWATCH * size, from_thick=thick, to_thick=thick)
    yield from patterned(band, swatch.material.pattern)
    if swatch.guard:
        yield underline(band)
