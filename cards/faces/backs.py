"""The backs of a card: cautions, the code with its legend, and how the knots are tied."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from cards.cautions import Caution
from cards.faces.back import caution_block, code_block, imprint_block, lines_block
from cards.faces.block import Block, TooSmall, filled
from cards.faces.lesson import lesson_block
from cards.faces.panel import Panel, Side
from cards.tying import Lesson
from layouts.face import Symbol
from layouts.text import TooWide

_LEAST_CAUTIONS = 4


@dataclass(frozen=True, slots=True)
class Backing:
    """What a card says besides the leader itself."""

    symbol: Symbol
    legend: tuple[str, ...]
    cautions: tuple[Caution, ...]
    lessons: tuple[Lesson, ...]
    shop_name: str | None
    shop_line: str | None
    shopping: tuple[str, ...] = ()  # what to buy, where that is asked for
    variants: tuple[str, ...] = ()  # a line for each variant of the recipe


def backs(
    backing: Backing, panels: Sequence[Panel], extra: Callable[[Panel], Sequence[Block]]
) -> list[Side]:
    """Return the sides behind a front, in the largest type in which they are fewest.

    `extra` gives the blocks that found no room on the front. The lessons go on sides of their
    own where one back does not hold them too. Raises `TooSmall`.
    """
    for taught in (True, False):
        for panel in panels:
            back = _one_back(backing, panel, extra(panel), taught=taught)
            if back is not None:
                return [back] if taught else [back, *_taught(backing, panels)]
    return [*_several_backs(backing, panels[-1], extra(panels[-1])), *_taught(backing, panels)]


def _one_back(
    backing: Backing, panel: Panel, extra: Sequence[Block], *, taught: bool
) -> Side | None:
    """Return one side with as many cautions as it holds, or None where too few find room."""
    try:
        must = _must(backing, panel, extra)
        lessons = _lessons(backing, panel) if taught else []
    except TooWide:
        return None
    for count in _counts(backing):
        blocks = (*must, _care(backing, panel, count), *lessons)
        if panel.holds(blocks):
            return Side(panel, blocks)
    return None


def _several_backs(backing: Backing, panel: Panel, extra: Sequence[Block]) -> list[Side]:
    """Return the fewest sides, with as many cautions as they hold."""
    must = _must(backing, panel, extra)
    splits = [
        filled([*must, _care(backing, panel, count)], panel.gap, panel.height)
        for count in _counts(backing)
    ]
    best = min(splits, key=len)  # of equals the first, which has most cautions
    return [Side(panel, tuple(blocks)) for blocks in best]


def _taught(backing: Backing, panels: Sequence[Panel]) -> list[Side]:
    """Return the fewest sides of lessons, in the largest type in which they stay so few."""
    splits = [sides for panel in panels if (sides := _lesson_sides(backing, panel)) is not None]
    if not splits:
        raise TooSmall("the steps of one of its knots take more than a side")
    return min(splits, key=len)


def _lesson_sides(backing: Backing, panel: Panel) -> list[Side] | None:
    """Return the lessons on as few sides as they take, or None where one is larger than a side."""
    try:
        split = filled(_lessons(backing, panel), panel.gap, panel.height)
    except (TooSmall, TooWide):
        return None
    return [Side(panel, tuple(blocks)) for blocks in split]


def _must(backing: Backing, panel: Panel, extra: Sequence[Block]) -> list[Block]:
    scale, width = panel.scale, panel.width
    code = code_block(backing.symbol, backing.legend, scale, width)
    if code is None:
        raise TooSmall(f"its code of {backing.symbol.side} modules is too large")
    imprint = imprint_block(backing.shop_name, backing.shop_line, scale, width)
    asked = [lines_block(lines, scale, width) for lines in (backing.variants, backing.shopping)]
    return [block for block in (imprint, *extra, code, *asked) if block.items]


def _care(backing: Backing, panel: Panel, count: int) -> Block:
    return caution_block(backing.cautions[:count], panel.scale, panel.width)


def _counts(backing: Backing) -> range:
    """How many cautions to try, the most first."""
    return range(len(backing.cautions), _LEAST_CAUTIONS - 1, -1)


def _lessons(backing: Backing, panel: Panel) -> list[Block]:
    return [lesson_block(lesson, panel.scale, panel.width) for lesson in backing.lessons]
