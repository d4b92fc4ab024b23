"""The wallet label: one leader in; a label with its name, measure, date and code out."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import floor
from typing import Literal

from tagend.cards.faces.block import DROP, Block, TooSmall, line_block, stacked
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.fonts import Chain, Fonts
from tagend.layouts.codes.code import DESIGN_MODULE, QUIET, modules_at
from tagend.layouts.paper.face import (
    POINTS_PER_INCH,
    Code,
    Face,
    Path,
    Symbol,
    rectangle,
    segment,
    shifted,
)
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import TooWide, break_lines, set_line
from tagend.layouts.stock.formats import LabelSheet

# The type sizes to try, in points: the name's, and the other lines'.
_SIZES = (
    *((26.0, 18.0), (24.0, 17.0), (22.0, 16.0), (20.0, 15.0), (18.0, 14.0), (16.0, 13.0)),
    *((14.0, 12.5), (12.0, 10.5), (11.0, 9.5), (10.0, 8.5), (9.0, FLOOR), (8.0, FLOOR)),
)
_WHOLE = 16.0  # a name as large as this is worth no broken line
_BROKEN, _BREAK = 10.5, 0.45  # points: at most so much are broken lines worth, less for each break
_CORNER_OF_ROUND = 0.1464  # 1/2 - 1/sqrt(8): how far the square in a circle stands off its box
_PEN = 0.5


@dataclass(frozen=True, slots=True)
class LabelNote:
    """What a label says besides its leader."""

    number: str | None = None  # such as `3 of 12`, in the label's language
    tied: date | None = None  # where that is another day than its recipe's
    lots: tuple[str, ...] = ()  # of the line in it
    first_out: Literal["butt", "fly"] | None = None  # the end that leaves the wallet first
    test_box: bool = False  # a box to tick when the leader has been pull-tested


PLAIN = LabelNote()


@dataclass(frozen=True, slots=True)
class _Inside:
    """The room inside a label's edge."""

    width: float
    height: float
    inset: float
    dot: float  # of the printer of a roll, on whole ones of which the code stands; else 0


@dataclass(frozen=True, slots=True)
class _LabelLine:
    """A line of a label: text, or text with a place to write or tick."""

    text: str
    fonts: Chain
    place: Literal["none", "blank", "box"] = "none"
    spare: bool = False  # may it give way?


@dataclass(frozen=True, slots=True)
class _Arrangement:
    """A way to set a label or its words, and what that is worth: a type size of the name."""

    block: Block
    worth: float


def wallet_label(
    told: Told, symbol: Symbol, stock: LabelSheet, fonts: Fonts, note: LabelNote = PLAIN
) -> Face:
    """Return the label in the largest type and code that fit.

    The lots, then a line to write the day on, give way before the code falls below its design
    size; what was asked for stays. Raises `TooSmall` where that does not fit, and `NoGlyph`.
    """
    inset = stock.inset + (_CORNER_OF_ROUND * stock.width if stock.shape == "round" else 0.0)
    room = _Inside(
        width=stock.width - 2 * inset,
        height=stock.height - 2 * inset,
        inset=inset,
        dot=POINTS_PER_INCH / stock.dpi if stock.dpi else 0.0,
    )
    lines = _lines(told, fonts, note)
    known = modules_at(stock.dpi)
    well = [module for module in known if fits(DESIGN_MODULE, module)]
    for modules in (well, known[len(well) :]):
        for kept in _giving_way(lines):
            placed = (
                _placed(kept, symbol, module, room, beside=beside)
                for module in modules
                for beside in (True, False)
            )
            ways = [way for way in placed if way is not None]
            if ways:
                block = max(
                    ways, key=lambda way: way.worth
                ).block  # of equals the one with the largest code
                return Face(told.leader.recipe.name, stock.width, stock.height, block.items)
    raise TooSmall(f"its code of {symbol.side} modules and its words need more room")


def _giving_way(lines: list[_LabelLine]) -> Iterator[list[_LabelLine]]:
    """Yield all lines, then ever fewer: the last that may give way is the first to do so."""
    yield lines
    for spare in reversed([line for line in lines if line.spare]):
        lines = [line for line in lines if line is not spare]
        yield lines


def _lines(told: Told, fonts: Fonts, note: LabelNote) -> list[_LabelLine]:
    """Return the lines, the name first."""
    say, recipe, medium = told.wording.say, told.leader.recipe, fonts.medium
    lines = [
        _LabelLine(recipe.name, fonts.bold),
        _LabelLine(told.spans(told.leader.finished), fonts.bold),
        _LabelLine(say("tippet", strand=told.strand(told.leader.tippet)), medium),
    ]
    if note.first_out is not None:
        lines.append(_LabelLine(say(f"{note.first_out}_first"), medium))
    lines.append(_tied(note.number, note.tied or recipe.tied, told.wording, medium))
    if note.test_box:
        lines.append(_LabelLine(say("pull_tested"), medium, "box"))
    if note.lots:
        lots = say("lots_of", count=len(note.lots), lots=", ".join(note.lots))
        lines.append(_LabelLine(lots, medium, spare=True))
    return lines


def _tied(number: str | None, day: date | None, wording: Wording, fonts: Chain) -> _LabelLine:
    """Return a number and the day; where that is not known, a line to write it on."""
    tied = " ".join(filter(None, (f"{number} ·" if number else "", wording.say("tied"))))
    if day is not None:
        return _LabelLine(f"{tied}\u00a0{day.isoformat()}", fonts)
    return _LabelLine(tied, fonts, "blank", spare=number is None)


def _placed(
    lines: list[_LabelLine], symbol: Symbol, module: float, room: _Inside, *, beside: bool
) -> _Arrangement | None:
    """Return words with the code beside or below them; None where they do not fit so."""
    side, inset = symbol.side * module, room.inset
    quiet = QUIET * module
    beyond = max(quiet - inset, 0.0)  # what the quiet zone needs besides the plain edge
    across = room.height if beside else room.width
    if side + 2 * beyond + room.dot > across:
        return None
    taken = side + quiet + beyond + room.dot
    width, height = (taken, 0.0) if beside else (0.0, taken)
    words = _words(lines, room.width - width, room.height - height)
    if words is None:
        return None
    middle, top = inset + (across - side + room.dot) / 2, inset
    if beside:
        x, y = inset + room.width - beyond - side, middle
        top += (room.height - words.block.height) / 2
    else:
        x, y = middle, inset + room.height - beyond - side
    if room.dot:
        x, y = (floor(place / room.dot) * room.dot for place in (x, y))
    items = (*shifted(words.block.items, inset, top), Code(x, y, module, symbol))
    return _Arrangement(Block(items, room.height), words.worth)


def _words(lines: list[_LabelLine], width: float, height: float) -> _Arrangement | None:
    """Return the lines in the largest type that fits, sooner whole than broken, or None."""
    found: list[_Arrangement] = []
    for size, other in _SIZES:
        try:
            blocks = [
                block
                for place, line in enumerate(lines)
                for block in _set(line, other if place else size, width)
            ]
        except TooWide:
            continue
        block = stacked(blocks)
        if block.height > height:
            continue
        breaks = len(blocks) - len(lines)
        if not breaks:
            found.append(_Arrangement(block, size))
            break  # smaller ones are worth less
        if size < _WHOLE:
            found.append(_Arrangement(block, min(size, _BROKEN) - _BREAK * breaks))
    return max(found, key=lambda way: way.worth, default=None)


def _set(line: _LabelLine, size: float, width: float) -> Iterator[Block]:
    if line.place == "none":
        for broken in break_lines(line.text, line.fonts, size, width):
            yield line_block(broken)
        return
    words = set_line(line.text, line.fonts, size)
    start, baseline = words.width + 0.4 * size, DROP * size
    if line.place == "box":
        box = 0.75 * size
        end, steps = start + box, rectangle(start, baseline - box, box, box)
    else:
        below = baseline + 0.1 * size
        end, steps = start + 3.0 * size, segment(start, below, width, below)
    if end > width:
        raise TooWide(line.text, width, end)
    block = line_block(words)
    yield Block((*block.items, Path(steps, _PEN)), block.height)
