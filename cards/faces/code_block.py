"""The code on a card: a symbol and its legend in; one block with both out."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, Scale, small_lines
from tagend.layouts.codes.code import MODULES, QUIET
from tagend.layouts.paper.face import MM, Code, Symbol, shifted
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import TooWide

_SIDE = 19 * MM  # at factor 1, or what the smallest module makes of it


def code_block(symbol: Symbol, legend: Sequence[str], scale: Scale, width: float) -> Block | None:
    """Return the code with its legend beside it, or below it where a word is too wide for that.

    None where the code does not fit the width. The quiet zone is part of the block,
    so that nothing can be set into it; at the left it is the card's own edge, which is wider.
    """
    wanted = (each for each in MODULES if fits(symbol.side * each, _SIDE * scale.factor))
    module = next(wanted, MODULES[-1])
    side = (symbol.side + 2 * QUIET) * module
    if not fits(side, width):
        return None
    x = side - QUIET * module
    code = Code(0, QUIET * module, module, symbol)
    try:
        words = small_lines(legend, scale, width - x)
    except TooWide:
        words = small_lines(legend, scale, width)
        return Block((code, *shifted(words.items, 0, side)), side + words.height)
    return Block((code, *shifted(words.items, x, 0)), max(side, words.height))
