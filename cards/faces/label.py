"""The wallet label: one leader in; a label with its name, measure, date and code out."""

from collections.abc import Iterator
from datetime import date

from cards.faces.block import Block, TooSmall, line_block, stacked
from cards.leader import Leader
from cards.words import span, strand
from fonts import Weight
from layouts.code import MODULES, QUIET
from layouts.face import Code, Face, Item, Path, Symbol, segment, shifted
from layouts.formats import LabelSheet
from layouts.legible import FLOOR
from layouts.text import TooWide, break_lines, set_line

_NAME_SIZES = (12.0, 11.0, 10.0, 9.0, 8.0)  # points; the other lines are a step smaller
_CORNER_OF_ROUND = 0.1464  # 1/2 - 1/sqrt(8): how far the square in a circle stands off its box
_PEN = 0.5


def wallet_label(leader: Leader, symbol: Symbol, stock: LabelSheet) -> Face:
    """Return the label in the largest type and code that fit; both give way in turn.

    Raises `TooSmall` where not even the smallest fit, and `NoGlyph`.
    """
    inset = stock.inset + (_CORNER_OF_ROUND * stock.width if stock.shape == "round" else 0.0)
    width, height = stock.width - 2 * inset, stock.height - 2 * inset
    for module in MODULES:
        quiet = QUIET * module
        side = symbol.side * module
        beyond = max(quiet - inset, 0.0)  # what the quiet zone needs besides the plain edge
        if side + 2 * beyond > height:
            continue
        words = _words(leader, width - side - quiet - beyond, height)
        if words is None:
            continue
        code = Code(inset + width - beyond - side, inset + (height - side) / 2, module, symbol)
        text = shifted(words.items, inset, inset + (height - words.height) / 2)
        return Face(leader.recipe.name, stock.width, stock.height, (*text, code))
    raise TooSmall(f"its code of {symbol.side} modules and its name need more room")


def _words(leader: Leader, width: float, height: float) -> Block | None:
    """Return the lines of a label in the largest type that fits, or None."""
    for size in _NAME_SIZES:
        try:
            block = stacked(_lines(leader, size, width))
        except TooWide:
            continue
        if block.height <= height:
            return block
    return None


def _lines(leader: Leader, size: float, width: float) -> Iterator[Block]:
    recipe = leader.recipe
    small = max(size - 1.5, FLOOR)
    texts: list[tuple[str, Weight, float]] = [
        (recipe.name, "bold", size),
        (span(leader.finished, leader), "bold", small),
        (f"tippet {strand(leader.tippet)}", "medium", small),
    ]
    for text, font, points in texts:
        for line in break_lines(text, font, points, width):
            yield line_block(line)
    yield _tied(recipe.tied, small, width)


def _tied(tied: date | None, size: float, width: float) -> Block:
    """Return the day it was tied, or a line to write it on."""
    if tied is not None:
        return line_block(set_line(f"tied {tied.isoformat()}", "medium", size))
    block = line_block(set_line("tied", "medium", size))
    y = block.height - 0.1 * size
    start = set_line("tied ", "medium", size).width + 0.3 * size
    blank: Item = Path(segment(start, y, width, y), _PEN)
    return Block((*block.items, blank), block.height)
