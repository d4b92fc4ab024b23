"""The head of a card: a leader in; its name, length, use and tippet out, to be read at a glance."""

from functools import lru_cache

from tagend.cards.faces.block import (
    Block,
    Scale,
    ended,
    line_block,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.panel import Panel
from tagend.cards.words.leader_words import Told
from tagend.fonts import Chain
from tagend.layouts.paper.text import fit_size, set_line


def head(told: Told, scale: Scale, width: float) -> Block:
    """Return the block that says which leader this is, what it is for and how it ends."""
    more = small_lines((told.tapers(), told.droppers()), scale, width)
    return stacked([_named(told, scale, width, told.tippet()), more])


def card_head(told: Told, panel: Panel) -> Block:
    """Return the same over a table, which tells how it ends."""
    return _named(told, panel.scale, panel.width, "")


def note(told: Told, panel: Panel) -> Block:
    """Return the recipe's note."""
    return panel.small(told.leader.recipe.note or "")


@lru_cache(maxsize=64)  # a front is tried with this and that below its head
def _named(told: Told, scale: Scale, width: float, end: str) -> Block:
    leader, recipe = told.leader, told.leader.recipe
    weight = told.wording.say("weight", weight=recipe.line_weight) if recipe.line_weight else ""
    length, use = told.span(leader.finished), recipe.use or ""
    end = _joined(told.second_span(leader.finished), end)
    title = _beside(recipe.name, _joined(weight, length), scale.bold, scale.name, width)
    if title is None:
        title = _narrow_title(recipe.name, length, scale, width)
        end = _joined(weight, end)
    if not use and not end:
        return title
    below = _beside(use, end, scale.medium, scale.small, width)
    return stacked([title, below or small_lines((use, end), scale, width)])


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
