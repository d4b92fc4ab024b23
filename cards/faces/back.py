"""The back of a card: cautions, and the code with what a person needs to read it."""

from collections.abc import Sequence

from cards.cautions import Caution
from cards.faces.block import Block, Scale, line_block, stacked
from layouts.code import QUIET, best_module
from layouts.face import Code, Symbol, shifted
from layouts.text import break_lines


def caution_block(cautions: Sequence[Caution], scale: Scale, width: float) -> Block:
    """Return the cautions, one after the other, the most important first."""
    return stacked(_paragraph(caution.short, scale, width) for caution in cautions)


def code_block(symbol: Symbol, legend: Sequence[str], scale: Scale, width: float) -> Block | None:
    """Return the code with its legend beside it, or None where half the width is too narrow.

    The quiet zone is part of the block, so that nothing can be set into it; at the left it is
    the card's own edge, which is wider.
    """
    module = best_module(width / 2, symbol.side)
    if module is None:
        return None
    side = (symbol.side + 2 * QUIET) * module
    x = side - QUIET * module
    words = stacked(_paragraph(text, scale, width - x) for text in legend)
    code = Code(0, QUIET * module, module, symbol)
    return Block((code, *shifted(words.items, x, 0)), max(side, words.height))


def imprint_block(name: str | None, line: str | None, scale: Scale, width: float) -> Block:
    """Return the shop's name and its line of text, as far as they are given."""
    lines = [
        line_block(set_line_of)
        for text, weight in ((name, "bold"), (line, "medium"))
        if text
        for set_line_of in break_lines(text, weight, scale.small, width)  # type: ignore[arg-type]
    ]
    return stacked(lines)


def _paragraph(text: str, scale: Scale, width: float) -> Block:
    lines = break_lines(text, "medium", scale.small, width)
    return stacked([line_block(line) for line in lines])
