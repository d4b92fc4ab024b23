"""The code on a card: a symbol and its legend in; one block with both out."""

from functools import lru_cache

from tagend.cards.faces.block import Block, Scale, beside, small_lines, stacked
from tagend.layouts.codes.code import MODULES, QUIET
from tagend.layouts.paper.face import MM, Code, Symbol
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import TooWide

_SIDE = 19 * MM  # at factor 1, or what the smallest module makes of it


@lru_cache(maxsize=64)
def code_block(symbol: Symbol, legend: tuple[str, ...], scale: Scale, width: float) -> Block | None:
    """Return the code with as much of its legend beside it as is no higher.

    Where a word is too wide for that, the first line stands below. None where the code does not fit
    the width. The quiet zone is part of the block, so that nothing can be set into it; at the left
    it is the card's own edge, or what lies between two columns.
    """
    wanted = (each for each in MODULES if fits(symbol.side * each, _SIDE * scale.factor))
    module = next(wanted, MODULES[-1])
    side = (symbol.side + 2 * QUIET) * module
    if not fits(side, width):
        return None
    x = side - QUIET * module
    code = Code(0, QUIET * module, module, symbol)
    for count in range(len(legend), 0, -1):
        try:
            words = small_lines(legend[:count], scale, width - x)
        except TooWide:
            continue
        if fits(words.height, side):
            return beside([Block((code,), side), words], x)
    words = small_lines(legend[:1], scale, width)
    return stacked([Block((code,), side), words])
