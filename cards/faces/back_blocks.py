"""The back of a card: cautions, and the code with what a person needs to read it."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, Scale, hung, line_block, stacked
from tagend.cards.words.cautions import Caution
from tagend.layouts.codes.code import QUIET, best_module
from tagend.layouts.paper.face import Code, Symbol, shifted
from tagend.layouts.paper.text import TooWide, break_lines


def caution_block(cautions: Sequence[Caution], scale: Scale, width: float) -> Block:
    """Return the cautions, one after the other, the most important first."""
    return stacked(hung("!", caution.short, scale, width) for caution in cautions)


def lines_block(lines: Sequence[str], scale: Scale, width: float) -> Block:
    """Return lines of small type, one below the other."""
    return stacked(_paragraph(line, scale, width) for line in lines)


def code_block(
    symbol: Symbol, legend: Sequence[str], scale: Scale, width: float, share: float = 0.5
) -> Block | None:
    """Return the code with its legend beside it, or below it where a word is too wide for that.

    None where the code does not fit its share of the width. The quiet zone is part of the block,
    so that nothing can be set into it; at the left it is the card's own edge, which is wider.
    """
    module = best_module(width * share, symbol.side)
    if module is None:
        return None
    side = (symbol.side + 2 * QUIET) * module
    x = side - QUIET * module
    code = Code(0, QUIET * module, module, symbol)
    try:
        words = lines_block(legend, scale, width - x)
    except TooWide:
        words = lines_block(legend, scale, width)
        return Block((code, *shifted(words.items, 0, side)), side + words.height)
    return Block((code, *shifted(words.items, x, 0)), max(side, words.height))


def _paragraph(text: str, scale: Scale, width: float) -> Block:
    lines = break_lines(text, "medium", scale.small, width)
    return stacked([line_block(line) for line in lines])
