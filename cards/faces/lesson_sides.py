"""How the knots are tied, over a card's sides: lessons and panels in; blocks and sides out."""

from collections.abc import Sequence
from itertools import accumulate, combinations

from tagend.cards.faces.block import Block, TooSmall, beside, filled, stack_height, stacked
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.lesson import Figure, lesson_block
from tagend.cards.faces.panel import CardSide, More, Panel
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.lengths import fits

_COLUMN = 180.0  # points at factor 1: so wide, a step takes one line, or at most two
_GUTTER = 14.0  # points at factor 1


def lesson_blocks(lessons: Sequence[Lesson], panel: Panel, figure: Figure) -> list[Block]:
    """Return the lessons as blocks, on a wide panel as one block of two columns."""
    blocks = _set(lessons, panel, figure)
    count = _columns(panel)
    if count == 1 or not blocks:
        return blocks
    columns, _ = _filled(blocks, count, stack_height(blocks, panel.gap), panel.gap)
    return [_beside(columns, panel)]


def lesson_sides(
    text: CardText, panels: Sequence[Panel], before: More, place: int
) -> list[CardSide]:
    """Return the fewest sides of lessons, in the largest type in which they stay so few.

    `before` gives what stands over them; `place` sides of the card come first. Figures are drawn
    where they take no more sides, or where they are wished. Raises `TooSmall`.
    """

    def split(on: Sequence[Panel], figure: Figure) -> list[CardSide]:
        """Return the lessons on the fewest sides; none where one is higher than a side."""
        splits = []
        for panel in on:
            try:
                splits.append(_sides(text, panel, before(panel), place, figure))
            except TooSmall:
                continue
        return min(splits, key=len, default=[])

    plain = split(panels, "none")
    if plain and not text.figures:  # loading figures to find out takes its time
        low = split(panels, "least")
        if not low or len(low) > len(plain):
            return plain
    roomy = split(panels, "room")
    if not plain and not roomy and (text.lessons or before(panels[-1])):
        raise TooSmall("the steps of one of its knots take more than a side")
    if roomy and (text.figures or not plain or len(roomy) <= len(plain)):
        return split([roomy[0].panel], "drawn")
    return plain


def _sides(
    text: CardText, panel: Panel, before: Sequence[Block], place: int, figure: Figure
) -> list[CardSide]:
    """Return the sides of one panel, each filled before the next. Raises `TooSmall`."""

    def over(number: int) -> list[Block]:
        return text.over(panel, place + number)

    sides = filled(before, panel.gap, panel.height, over)
    left: Sequence[Block] = _set(text.lessons, panel, figure)
    fresh = not sides  # the last side before the lessons may hold some of them
    while left:
        if fresh:
            sides.append(over(len(sides)))
        taken = sum(block.height + panel.gap for block in sides[-1])
        columns, left = _filled(left, _columns(panel), panel.height - taken, panel.gap)
        if columns:
            sides[-1].append(_beside(columns, panel))
        elif fresh:
            raise TooSmall("a part of it is higher than the space there is")
        fresh = True
    return [CardSide(panel, tuple(blocks)) for blocks in sides]


def _filled(
    blocks: Sequence[Block], count: int, room: float, gap: float
) -> tuple[list[Sequence[Block]], Sequence[Block]]:
    """Return at most so many columns of blocks, and what is left; where nothing is, even ones."""
    columns, left = _taken(blocks, count, room, gap)
    if left or count == 1:
        return columns, left
    runs = (blocks[start:end] for start, end in combinations(range(len(blocks) + 1), 2))
    heights = sorted(stack_height(run, gap) for run in runs)
    even = (_taken(blocks, count, height, gap) for height in heights)
    return next((found for found in even if not found[1]), (columns, left))


def _taken(
    blocks: Sequence[Block], count: int, room: float, gap: float
) -> tuple[list[Sequence[Block]], Sequence[Block]]:
    """Return at most so many columns no higher than the room, and what is left."""
    columns: list[Sequence[Block]] = []
    while blocks and len(columns) < count:
        ends = accumulate(block.height + gap for block in blocks)
        held = sum(fits(end - gap, room) for end in ends)
        if not held:
            break
        columns.append(blocks[:held])
        blocks = blocks[held:]
    return columns, blocks


def _beside(columns: Sequence[Sequence[Block]], panel: Panel) -> Block:
    step = _column_width(panel) + _GUTTER * panel.scale.factor
    return beside((stacked(column, panel.gap) for column in columns), step)


def _set(lessons: Sequence[Lesson], panel: Panel, figure: Figure) -> list[Block]:
    width = _column_width(panel)
    return [lesson_block(lesson, panel.scale, width, figure) for lesson in lessons]


def _columns(panel: Panel) -> int:
    least = (2 * _COLUMN + _GUTTER) * panel.scale.factor
    return 2 if panel.width >= least else 1


def _column_width(panel: Panel) -> float:
    count = _columns(panel)
    return (panel.width - (count - 1) * _GUTTER * panel.scale.factor) / count
