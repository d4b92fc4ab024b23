"""The head of a card: a leader in; its name, length, use and tippet out, to be read at a glance."""

from tagend.cards.faces.block import (
    Block,
    Scale,
    ended,
    line_block,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.leader_table import Beside
from tagend.cards.words.leader_words import Told
from tagend.fonts import Chain
from tagend.layouts.paper.text import fit_size, set_line


def head(told: Told, scale: Scale, width: float, in_table: Beside = "loops and laps") -> Block:
    """Return the block that says which leader this is, what it is for and how it ends.

    It has the sizes of the loops, and the laps, where the table has no room for them.
    """
    leader, recipe = told.leader, told.leader.recipe
    weight = told.wording.say("weight", weight=recipe.line_weight) if recipe.line_weight else ""
    length, use = told.span(leader.finished), recipe.use or ""
    tippet = _joined(told.second_span(leader.finished), told.tippet())
    title = _beside(recipe.name, _joined(weight, length), scale.bold, scale.name, width)
    if title is None:
        title = _narrow_title(recipe.name, length, scale, width)
        tippet = _joined(weight, tippet)
    below = _beside(use, tippet, scale.medium, scale.small, width)
    loops = "" if in_table == "loops and laps" else told.loops()
    more = (told.tapers(), told.droppers(), loops, told.laps() if in_table == "nothing" else "")
    return stacked(
        [title, below or small_lines((use, tippet), scale, width), small_lines(more, scale, width)]
    )


def continued_head(told: Told, scale: Scale, width: float) -> Block:
    """Return the block over a table that goes on from another side."""
    name = told.wording.say("continued", name=told.leader.recipe.name)
    return text_block(name, scale.bold, scale.body, width)


def _joined(*words: str) -> str:
    return " · ".join(filter(None, words))


def _beside(left: str, right: str, fonts: Chain, size: float, width: float) -> Block | None:
    """Return two texts on one line, one at either end, or None where they would meet."""
    start, end = (set_line(text, fonts, size) for text in (left, right))
    meet = start.width + end.width + size > width
    return None if meet else ended(line_block(start), end, width)


def _narrow_title(name: str, length: str, scale: Scale, width: float) -> Block:
    """Set the length at the right, and the name in the largest type in which it takes one line."""
    total = set_line(length, scale.bold, scale.name)
    room = width - total.width - scale.body
    size = fit_size(name, scale.bold, room, scale.name, scale.body) or scale.body
    return ended(text_block(name, scale.bold, size, room), total, width)
