"""The head of a card: a leader in; its name, length, use and tippet out, to be read at a glance."""

from tagend.cards.faces.block import (
    DROP,
    LEADING,
    Block,
    Scale,
    line_block,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.told import Told
from tagend.cards.words.leader_words import (
    dropper_words,
    loop_words,
    second_span,
    span,
    taper_words,
    thickness,
)
from tagend.fonts import Chain
from tagend.layouts.paper.text import fit_size, set_line


def head(told: Told, scale: Scale, width: float, *, loops: bool = False) -> Block:
    """Return the block that says which leader this is, what it is for and how it ends.

    The sizes of its `loops` are asked for where the table has no room for them.
    """
    leader, wording, recipe = told.leader, told.wording, told.leader.recipe
    weight = wording.say("weight", weight=recipe.line_weight) if recipe.line_weight else ""
    length = span(leader.finished, leader, wording)
    tippet = wording.say("tippet", strand=thickness(leader.tippet, leader, wording))
    tippet = _joined(second_span(leader.finished, leader, wording), tippet)
    title = _beside(recipe.name, _joined(weight, length), scale.bold, scale.name, width)
    if title is None:
        title = _narrow_title(recipe.name, length, scale, width)
        tippet = _joined(weight, tippet)
    below = _below(recipe.use or "", tippet, scale, width)
    more = [loop_words(leader, wording)] if loops else []
    more = [taper_words(leader, wording), dropper_words(leader, wording), *more]
    return stacked([title, below, small_lines(more, scale, width)])


def continued_head(told: Told, scale: Scale, width: float) -> Block:
    """Return the block over a table that goes on from another side."""
    name = told.wording.say("continued", name=told.leader.recipe.name)
    return text_block(name, scale.bold, scale.body, width)


def _joined(*words: str) -> str:
    return " · ".join(filter(None, words))


def _below(use: str, tippet: str, scale: Scale, width: float) -> Block:
    """Return use and tippet on one line where they fit, else each on its own."""
    together = _beside(use, tippet, scale.medium, scale.small, width)
    return together or small_lines((use, tippet), scale, width)


def _beside(left: str, right: str, fonts: Chain, size: float, width: float) -> Block | None:
    """Return two texts on one line, one at either end, or None where they would meet."""
    lines = [set_line(text, fonts, size) for text in (left, right)]
    if sum(line.width for line in lines) + size > width:
        return None
    block = line_block(lines[0])
    return Block((*block.items, *lines[1].at(width, DROP * size, "right")), block.height)


def _narrow_title(name: str, length: str, scale: Scale, width: float) -> Block:
    """Set the length at the right, and the name in the largest type in which it takes one line."""
    total = set_line(length, scale.bold, scale.name)
    room = width - total.width - scale.body
    size = fit_size(name, scale.bold, room, scale.name, scale.body) or scale.body
    block = text_block(name, scale.bold, size, room)
    return Block(
        (*block.items, *total.at(width, DROP * scale.name, "right")),
        max(block.height, LEADING * scale.name),
    )
