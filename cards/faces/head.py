"""The head of a card: a leader in; its name, length, use and tippet out, to be read at a glance."""

from cards.faces.block import DROP, LEADING, Block, Scale, line_block, stacked
from cards.leader import Leader
from cards.words import span, thickness
from layouts.text import break_lines, fit_size, set_line


def head(leader: Leader, scale: Scale, width: float) -> Block:
    """Return the block that says which leader this is, what it is for and how it ends."""
    use = leader.recipe.use or ""
    weight = f"{leader.recipe.line_weight}-weight · " if leader.recipe.line_weight else ""
    tippet = f"{weight}tippet {thickness(leader.tippet)}"
    left, right = (set_line(text, "medium", scale.small) for text in (use, tippet))
    if left.width + right.width + scale.small <= width:
        height = line_block(left).height
        line = Block(
            (*line_block(left).items, *right.at(width, DROP * scale.small, "right")), height
        )
        return stacked([_title(leader, scale, width), line])
    lines = [
        line_block(line)
        for text in (use, tippet)
        for line in break_lines(text, "medium", scale.small, width)
    ]
    return stacked([_title(leader, scale, width), *lines])


def continued_head(leader: Leader, scale: Scale, width: float) -> Block:
    """Return the block over a table that goes on from another side."""
    name = f"{leader.recipe.name}, continued"
    return stacked([line_block(line) for line in break_lines(name, "bold", scale.body, width)])


def _title(leader: Leader, scale: Scale, width: float) -> Block:
    """Set the length at the right, and the name in the largest type in which it takes one line."""
    total = set_line(span(leader.finished, leader), "bold", scale.name)
    room = width - total.width - scale.body
    name = leader.recipe.name
    size = fit_size(name, "bold", room, scale.name, scale.body) or scale.body
    block = stacked([line_block(line) for line in break_lines(name, "bold", size, room)])
    return Block(
        (*block.items, *total.at(width, DROP * scale.name, "right")),
        max(block.height, LEADING * scale.name),
    )
