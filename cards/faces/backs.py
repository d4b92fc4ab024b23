"""The backs of a card: cautions, the code with its legend, and how the knots are tied."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from cards.cautions import Caution
from cards.faces.back import caution_block, code_block, imprint_block, lines_block
from cards.faces.block import Block, TooSmall, filled, stacked
from cards.faces.lesson import LEAST_FIGURE, lesson_block
from cards.faces.panel import Panel, Side
from cards.tying import Lesson
from layouts.face import Symbol

_LEAST_CAUTIONS = 4
_CODE_SHARES = (0.5, 0.35)  # of the width, for the code; the rest is its legend's


class Backing(NamedTuple):
    """What a card says besides the leader itself."""

    symbol: Symbol
    legend: tuple[str, ...]
    cautions: tuple[Caution, ...]
    lessons: tuple[Lesson, ...]
    shop_name: str | None
    shop_line: str | None
    shopping: tuple[str, ...] = ()  # what to buy, where that is asked for
    variants: tuple[str, ...] = ()  # a line for each variant of the recipe
    figures: bool = False  # of the knots, even where they take more sides


def backs(
    backing: Backing, panels: Sequence[Panel], extra: Callable[[Panel], Sequence[Block]]
) -> list[Side]:
    """Return the sides behind a front, in the largest type in which they are fewest.

    `extra` gives the blocks that found no room on the front. The lessons go on sides of their
    own where one back does not hold them too. Raises `TooSmall`.
    """
    if backing.lessons:
        back = _everything_on_one(backing, panels, extra)
        if back is not None:
            return [back]
    for panel in panels:
        back = _one_back(backing, panel, extra(panel), [])
        if back is not None:
            return [back, *_taught(backing, panels)]
    return [*_several_backs(backing, panels[-1], extra(panels[-1])), *_taught(backing, panels)]


def _everything_on_one(
    backing: Backing, panels: Sequence[Panel], extra: Callable[[Panel], Sequence[Block]]
) -> Side | None:
    """Return one side with the lessons too, their figures as well where there is room for them."""
    plain = None
    for panel in panels:
        lessons = _lessons(backing, panel, drawn=False)
        if not panel.holds(lessons):
            continue
        back = _one_back(backing, panel, extra(panel), lessons)
        if back is None:
            continue
        lessons = _lessons(backing, panel, drawn=True)
        drawn = _one_back(backing, panel, extra(panel), lessons)
        if drawn is not None:
            return drawn
        plain = plain or back
    return None if backing.figures else plain


def _one_back(
    backing: Backing, panel: Panel, extra: Sequence[Block], lessons: Sequence[Block]
) -> Side | None:
    """Return one side with as many cautions as it holds, or None where too few find room."""
    for share in _CODE_SHARES:
        must = _must(backing, panel, extra, share)
        for count in _counts(backing) if must else ():
            blocks = (*must, _care(backing, panel, count), *lessons)
            if panel.holds(blocks):
                return Side(panel, blocks)
    return None


def _several_backs(backing: Backing, panel: Panel, extra: Sequence[Block]) -> list[Side]:
    """Return the fewest sides, with as many cautions as they hold."""
    must = _must(backing, panel, extra, _CODE_SHARES[0])
    if not must:
        raise TooSmall(f"its code of {backing.symbol.side} modules is too large")
    splits = [
        filled([*must, _care(backing, panel, count)], panel.gap, panel.height)
        for count in _counts(backing)
    ]
    best = min(splits, key=len)  # of equals the first, which has most cautions
    return [Side(panel, tuple(blocks)) for blocks in best]


def _taught(backing: Backing, panels: Sequence[Panel]) -> list[Side]:
    """Return the fewest sides of lessons, in the largest type in which they stay so few.

    Figures are drawn where they take no more sides, or where they are wished.
    """
    plain = _split_lessons(backing, panels, drawn=False)
    if plain and not backing.figures and not _has_room(plain, len(backing.lessons)):
        return plain
    drawn = _split_lessons(backing, panels, drawn=True)
    if not plain and not drawn and backing.lessons:
        raise TooSmall("the steps of one of its knots take more than a side")
    use_figures = drawn and (backing.figures or not plain or len(drawn) <= len(plain))
    return drawn if use_figures else plain


def _has_room(sides: Sequence[Side], figures: int) -> bool:
    """Whether sides may hold so many figures too: drawing them to find out takes its time."""
    free = sum(side.panel.height - stacked(side.blocks).height for side in sides)
    return free >= figures * LEAST_FIGURE


def _split_lessons(backing: Backing, panels: Sequence[Panel], *, drawn: bool) -> list[Side]:
    """Return the lessons on the fewest sides; none where one is higher than a side."""
    splits = []
    for panel in panels:
        lessons = _lessons(backing, panel, drawn=drawn)
        if all(lesson.height <= panel.height for lesson in lessons):
            splits.append((panel, filled(lessons, panel.gap, panel.height)))
    if not splits:
        return []
    panel, best = min(splits, key=lambda split: len(split[1]))
    return [Side(panel, tuple(blocks)) for blocks in best]


def _must(backing: Backing, panel: Panel, extra: Sequence[Block], share: float) -> list[Block]:
    """Return what every back says; nothing where the code does not fit its share of the width."""
    scale, width = panel.scale, panel.width
    code = code_block(backing.symbol, backing.legend, scale, width, share)
    if code is None:
        return []
    imprint = imprint_block(backing.shop_name, backing.shop_line, scale, width)
    asked = [lines_block(lines, scale, width) for lines in (backing.variants, backing.shopping)]
    return [block for block in (imprint, *extra, code, *asked) if block.items]


def _care(backing: Backing, panel: Panel, count: int) -> Block:
    return caution_block(backing.cautions[:count], panel.scale, panel.width)


def _counts(backing: Backing) -> range:
    """How many cautions to try, the most first."""
    return range(len(backing.cautions), _LEAST_CAUTIONS - 1, -1)


def _lessons(backing: Backing, panel: Panel, *, drawn: bool) -> list[Block]:
    return [
        lesson_block(lesson, panel.scale, panel.width, drawn=drawn) for lesson in backing.lessons
    ]
