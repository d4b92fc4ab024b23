"""The wallet label: one leader in; a label with its name, measure, date and code out."""

from collections.abc import Iterator
from datetime import date
from typing import Literal, NamedTuple

from tagend.cards.faces.block import DROP, Block, TooSmall, line_block, stacked
from tagend.cards.faces.told import Told
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import spans, strand
from tagend.fonts import Chain, Fonts
from tagend.layouts.codes.code import DESIGN_MODULE, MODULES, QUIET
from tagend.layouts.paper.face import Code, Face, Item, Path, Symbol, rectangle, segment, shifted
from tagend.layouts.paper.legible import FLOOR
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

_WELL = tuple(module for module in MODULES if module >= DESIGN_MODULE)
_FINE = tuple(module for module in MODULES if module < DESIGN_MODULE)


class LabelNote(NamedTuple):
    """What a label says besides its leader."""

    number: str | None = None  # such as `3 of 12`, in the label's language
    first_out: Literal["butt", "fly"] | None = None  # the end that leaves the wallet first
    test_box: bool = False  # a box to tick when the leader has been pull-tested


PLAIN = LabelNote()


class _Inside(NamedTuple):
    """The room inside a label's edge."""

    width: float
    height: float
    inset: float


def wallet_label(
    told: Told, symbol: Symbol, stock: LabelSheet, fonts: Fonts, note: LabelNote = PLAIN
) -> Face:
    """Return the label in the largest type and code that fit.

    Lines give way before the code falls below its design size, the last first: the box for the
    pull test, the day it was tied, the end that comes out first. Name, length and tippet stay.
    Raises `TooSmall` where not even those fit, and `NoGlyph`.
    """
    inset = stock.inset + (_CORNER_OF_ROUND * stock.width if stock.shape == "round" else 0.0)
    room = _Inside(stock.width - 2 * inset, stock.height - 2 * inset, inset)
    lines = _lines(told, fonts, note)
    for modules in (_WELL, _FINE):
        for kept in range(len(lines), _MUST - 1, -1):
            placed = (_placed(lines[:kept], symbol, module, room) for module in modules)
            ways = [way for way in placed if way is not None]
            if ways:
                items = max(ways, key=lambda way: way.worth).items  # of equals the largest code
                return Face(told.leader.recipe.name, stock.width, stock.height, items)
    raise TooSmall(f"its code of {symbol.side} modules and its name need more room")


class _LabelLine(NamedTuple):
    """A line of a label: text, or text with a place to write or tick."""

    text: str
    fonts: Chain
    place: Literal["none", "blank", "box"] = "none"


class _SetLines(NamedTuple):
    """Lines set one below the other, and what they are worth: a type size of the name."""

    block: Block
    worth: float


class _Way(NamedTuple):
    """The items of a label, and what its words are worth."""

    items: tuple[Item, ...]
    worth: float


_MUST = 3  # lines that every label has


def _lines(told: Told, fonts: Fonts, note: LabelNote) -> list[_LabelLine]:
    """Return the lines, the name first; the last is the first to give way."""
    leader, wording, recipe = told.leader, told.wording, told.leader.recipe
    tippet = wording.say("tippet", strand=strand(leader.tippet, leader, wording))
    lines = [
        _LabelLine(recipe.name, fonts.bold),
        _LabelLine(spans(leader.finished, leader, wording), fonts.bold),
        _LabelLine(tippet, fonts.medium),
    ]
    if note.first_out is not None:
        lines.append(_LabelLine(wording.say(f"{note.first_out}_first"), fonts.medium))
    lines.append(_tied(recipe.tied, wording, note.number, fonts.medium))
    if note.test_box:
        lines.append(_LabelLine(wording.say("pull_tested"), fonts.medium, place="box"))
    return lines


def _tied(tied: date | None, wording: Wording, number: str | None, fonts: Chain) -> _LabelLine:
    """Return the number, and the day it was tied or a line to write that on."""
    words = " ".join(filter(None, (f"{number} ·" if number else "", wording.say("tied"))))
    if tied is None:
        return _LabelLine(words, fonts, place="blank")
    return _LabelLine(f"{words}\u00a0{tied.isoformat()}", fonts)


def _placed(lines: list[_LabelLine], symbol: Symbol, module: float, room: _Inside) -> _Way | None:
    """Return words and code, beside or above each other as it is worth more; None for neither."""
    ways = (_beside(lines, symbol, module, room), _above(lines, symbol, module, room))
    found = [way for way in ways if way is not None]
    return max(found, key=lambda way: way.worth, default=None)


def _beside(lines: list[_LabelLine], symbol: Symbol, module: float, room: _Inside) -> _Way | None:
    quiet, side = QUIET * module, symbol.side * module
    beyond = max(quiet - room.inset, 0.0)  # what the quiet zone needs besides the plain edge
    if side + 2 * beyond > room.height:
        return None
    words = _words(lines, room.width - side - quiet - beyond, room.height)
    if words is None:
        return None
    x = room.inset + room.width - beyond - side
    code = Code(x, room.inset + (room.height - side) / 2, module, symbol)
    top = room.inset + (room.height - words.block.height) / 2
    return _Way((*shifted(words.block.items, room.inset, top), code), words.worth)


def _above(lines: list[_LabelLine], symbol: Symbol, module: float, room: _Inside) -> _Way | None:
    quiet, side = QUIET * module, symbol.side * module
    beyond = max(quiet - room.inset, 0.0)
    if side + 2 * beyond > room.width:
        return None
    words = _words(lines, room.width, room.height - side - quiet - beyond)
    if words is None:
        return None
    x = room.inset + (room.width - side) / 2
    code = Code(x, room.inset + room.height - beyond - side, module, symbol)
    return _Way((*shifted(words.block.items, room.inset, room.inset), code), words.worth)


def _words(lines: list[_LabelLine], width: float, height: float) -> _SetLines | None:
    """Return the lines in the largest type that fits, sooner whole than broken, or None."""
    found: list[_SetLines] = []
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
            found.append(_SetLines(block, size))
            break  # smaller ones are worth less
        if size < _WHOLE:
            found.append(_SetLines(block, min(size, _BROKEN) - _BREAK * breaks))
    return max(found, key=lambda words: words.worth, default=None)


def _set(line: _LabelLine, size: float, width: float) -> Iterator[Block]:
    if line.place == "none":
        for broken in break_lines(line.text, line.fonts, size, width):
            yield line_block(broken)
        return
    words = set_line(line.text, line.fonts, size)
    block = line_block(words)
    start, baseline = words.width + 0.4 * size, DROP * size
    steps = (
        rectangle(start, baseline - 0.75 * size, 0.75 * size, 0.75 * size)
        if line.place == "box"
        else segment(start, baseline + 0.1 * size, width, baseline + 0.1 * size)
    )
    needed = start + (0.75 if line.place == "box" else 3.0) * size
    if needed > width:
        raise TooWide(line.text, width, needed)
    yield Block((*block.items, Path(steps, _PEN)), block.height)
