"""How a knot is tied, in a strip of frames: a lesson, a width and a height in; a block out.

Each frame has its number, what is laid, folded or counted in it, and the knot drawn so far; the
last one has the finished knot.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import takewhile
from math import ceil

from msgspec import Struct

from tagend.cards.faces.block import DROP, LEADING, Block, Scale, stacked
from tagend.cards.figures.frames import Frame, knot_frames
from tagend.cards.figures.ink import inked
from tagend.cards.figures.step import Count
from tagend.cards.words.lessons import Lesson, counts_said
from tagend.fonts import Chain
from tagend.layouts.paper.face import Item, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.text import SetLine, TooWide, break_lines, set_line

_LEAST = 1.3  # points of a strand: two edges of 0.3 points with white of 0.4 between them
_GOOD = 1.5  # points of a strand, for which a strip takes more rows
_MOST = 0.075  # of the height, for a strand
_FINER = 0.05  # points by which a strand is tried thinner
_GAP = 9.0  # points between two frames
_BETWEEN = 3.0  # points between two rows
_NUMBER = 1.0  # of a frame's number, in type sizes
_WORDS = 6.5  # type sizes that a frame's words have at least, on each line
_DEEP = 0.05  # of a baseline's depth below it, in type sizes
_OFF = 1.5  # points from the words to the drawing


class _FrameWords(Struct, frozen=True):
    """One frame with its number and what is said of it."""

    frame: Frame
    number: SetLine
    words: tuple[str, ...]
    fonts: Chain


class _Shown(Struct, frozen=True):
    """One frame with its words set, and the points that a strand takes in it."""

    frame: Frame
    number: SetLine
    words: tuple[SetLine, ...]
    unit: float

    @property
    def top(self) -> float:
        """Where the drawing begins: as high as it may stand with its ink clear of the words."""
        number = self.number
        indent = _NUMBER * number.size
        ends = [number.width, *(indent + line.width for line in self.words)]
        ends[:2] = [max(ends[:2])]
        top = 0.0
        for line, end in enumerate(ends):
            bottom = (DROP + _DEEP + LEADING * line) * number.size
            below = bisect_left(self.frame.skyline, ((end + _OFF) / self.unit,))
            if below:
                down = self.frame.skyline[below - 1][1] * self.unit
                top = max(top, bottom + _OFF - down)
        return top

    @property
    def drawn(self) -> float:
        return self.frame.box.height * self.unit

    @property
    def width(self) -> float:
        words = max((line.width for line in self.words), default=0.0)
        return max(self.frame.box.width * self.unit, _NUMBER * self.number.size + words)


@lru_cache(maxsize=64)  # a card is tried in many sizes, and its decks have the same knots
def strip(lesson: Lesson, scale: Scale, width: float, height: float) -> Block | None:
    """Return a knot's frames in rows, their drawings at most so high; all are of one scale.

    None for a knot that has no figure, and where there is no room to draw it so that it can be
    read.
    """
    rows = _rows(_labels(lesson, scale), width, height)
    if not rows:
        return None
    return stacked([_row(row, width) for row in rows], _BETWEEN)


def _rows(labels: Sequence[_FrameWords], width: float, height: float) -> list[list[_Shown]]:
    """Return the fewest rows in which strands are thick enough, or else as thick as can be."""
    if not labels:
        return []
    best: list[list[_Shown]] = []
    found = 0.0
    thickest = min(_MOST * height, height / max(label.frame.box.height for label in labels))
    for each in dict.fromkeys(ceil(len(labels) / count) for count in range(1, len(labels) + 1)):
        unit, rows = _scaled(labels, width, thickest, each)
        if unit > found:
            best, found = rows, unit
        if found >= min(_GOOD, thickest):
            break
    return best


def _scaled(
    labels: Sequence[_FrameWords], width: float, unit: float, each: int
) -> tuple[float, list[list[_Shown]]]:
    """Return the thickest strand, `unit` at most, with which so many go into a row; the rows."""
    parts = [labels[start : start + each] for start in range(0, len(labels), each)]
    for row in parts:  # their drawings alone
        wide = sum(label.frame.box.width for label in row)
        over = unit - (width - _GAP * (len(row) - 1)) / wide
        unit -= _FINER * ceil(max(0.0, over) / _FINER)
    while unit >= _LEAST:
        shown = ([_shown(label, unit) for label in row] for row in parts)
        rows = list(takewhile(lambda row: _width(row) <= width, shown))
        if len(rows) == len(parts):
            return unit, rows
        unit -= _FINER
    return 0.0, []


def _width(row: Sequence[_Shown]) -> float:
    return sum(cell.width for cell in row) + _GAP * (len(row) - 1)


@lru_cache(maxsize=64)
def _labels(lesson: Lesson, scale: Scale) -> tuple[_FrameWords, ...]:
    first = lesson.turns[0]
    frames = knot_frames(lesson.knot, first.heavy, first.light)
    return tuple(_label(lesson, place, frame, scale) for place, frame in enumerate(frames))


def _label(lesson: Lesson, place: int, frame: Frame, scale: Scale) -> _FrameWords:
    words = [lesson.laid] if place == 0 and lesson.laid else []
    words += [_said(lesson, frame.count)] if frame.count else []
    number = set_line(f"{place + 1}", scale.bold, max(scale.small, FLOOR))
    return _FrameWords(frame, number, tuple(words), scale.medium)


def _shown(of: _FrameWords, unit: float) -> _Shown:
    lines = [line for words in of.words for line in _lines(words, of, unit)]
    return _Shown(of.frame, of.number, tuple(lines), unit)


def _lines(words: str, of: _FrameWords, unit: float) -> Sequence[SetLine]:
    """Return words on lines that keep to a room, or on one where a length is wider than that."""
    size = of.number.size
    room = max(of.frame.box.width * unit - _NUMBER * size, _WORDS * size)
    try:
        return break_lines(words, of.fonts, size, room)
    except TooWide:
        return [set_line(words, of.fonts, size)]


def _said(lesson: Lesson, count: Count) -> str:
    """Return how often something is done, wherever in the leader the knot is tied."""
    numbers = {turns.of(count.side) for turns in lesson.turns} if count.side else {count.number}
    (number, *more) = numbers
    told = counts_said(numbers, lesson.wording) if more else number
    say = lesson.wording.say
    return say("passes", count=told) if count.what == "passes" else say("turns", count=told)


def _row(row: Sequence[_Shown], width: float) -> Block:
    """Return frames side by side over the whole width, each drawing below its own words."""
    tops = [cell.top for cell in row]
    high = max(top + cell.drawn for top, cell in zip(tops, row, strict=True))

    def items() -> Iterator[Item]:
        x = 0.0
        gap = _GAP + max(0.0, width - _width(row)) / len(row)
        for top, cell in zip(tops, row, strict=True):
            size = cell.number.size
            yield from cell.number.at(x, DROP * size)
            for place, line in enumerate(cell.words):
                yield from line.at(x + _NUMBER * size, (DROP + LEADING * place) * size)
            ink = inked(cell.frame.strands, cell.unit, cell.frame.arrows)
            yield from shifted(ink, x, (top + high - cell.drawn) / 2)
            x += cell.width + gap

    return Block(lambda: tuple(items()), high)
