"""What stands behind a card's front: what it says and how full it is to be in; blocks out."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import repeat
from typing import TypeAlias

from tagend.cards.faces.block import Block, Scale, hung, small_lines
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.code_block import code_block
from tagend.cards.faces.diagram import low_diagrams
from tagend.cards.faces.front import Fronts
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.faces.lesson import HEIGHTS, has_figure, lesson_block
from tagend.cards.words.lessons import Lesson

_FIRST = 1  # caution is never left out, nor are those of wire


@dataclass(frozen=True, slots=True)
class Fullness:
    """How much of what is no must stands on a card; the least is all that must."""

    height: float = HEIGHTS[0]  # of the figures; one that needs more has it
    cautions: int = 0  # more than must stand there
    told: int = 0  # lessons with their steps in words
    renewals: bool = False
    variants: bool = False
    drawing: bool = False


Change: TypeAlias = Callable[[Fullness], Fullness]


def back_blocks(
    text: CardText,
    left: Sequence[str],
    scale: Scale,
    width: float,
    full: Fullness,
    *,
    drawn: bool,
) -> list[Block] | None:
    """Return the blocks in their order; `left` is what the front has no room for.

    None where the code or a figure is wider than the width.

    Not `drawn`, figures only take as much room. Raises `TooWide`.
    """
    code = code_block(text.symbol, text.legend, scale, width)
    knots = [
        _taught(lesson, scale, width, full, place, drawn=drawn)
        for place, lesson in enumerate(text.lessons)
    ]
    if code is None or None in knots:
        return None
    asked = (left, text.shopping, text.renewals * full.renewals, text.variants * full.variants)
    drawing = list(low_diagrams(text.told, scale, width))[:1] if full.drawing else []
    blocks = [
        *drawing,
        *(block for block in knots if block is not None),
        code,
        *_care(text, scale, width, full.cautions),
        *(small_lines(lines, scale, width) for lines in asked),
        imprint_block(text.imprint, scale, width),
    ]
    return [block for block in blocks if block.items or block.height]


def wishes(text: CardText, front: Fronts) -> Iterator[Change]:
    """Yield what a card is to say where it has room, the most important first."""

    def caution(full: Fullness) -> Fullness:
        return replace(full, cautions=full.cautions + 1)

    def higher(full: Fullness) -> Fullness:
        return replace(full, height=next(each for each in HEIGHTS if each > full.height))

    def told(full: Fullness) -> Fullness:
        return replace(full, told=full.told + 1)

    more = len(text.cautions) - _FIRST
    yield from repeat(caution, min(more, 2))
    yield from repeat(higher, 3 if text.lessons else 0)
    if not front.drawn:
        yield lambda full: replace(full, drawing=True)
    if text.renewals:
        yield lambda full: replace(full, renewals=True)
    if text.variants:
        yield lambda full: replace(full, variants=True)
    yield from repeat(higher, len(HEIGHTS) - 7 if text.lessons else 0)
    yield from repeat(told, len(text.lessons))
    yield from repeat(caution, max(more - 2, 0))
    yield from repeat(higher, 3 if text.lessons else 0)


def _taught(
    lesson: Lesson, scale: Scale, width: float, full: Fullness, place: int, *, drawn: bool
) -> Block | None:
    """Return a lesson with its figure as high as it is to be, or higher where it must be."""
    words, heights = place < full.told, [each for each in HEIGHTS if each >= full.height]
    if not has_figure(lesson):
        heights = heights[:1]
    tries = (lesson_block(lesson, scale, width, each, words=words, drawn=drawn) for each in heights)
    return next((block for block in tries if block is not None), None)


def _care(text: CardText, scale: Scale, width: float, more: int) -> list[Block]:
    """Return the cautions that must stand, and so many more, in their order."""
    kept = [
        caution
        for place, caution in enumerate(text.cautions)
        if place < _FIRST + more or caution.when == "wire"
    ]
    return [hung("!", caution.short, scale, width) for caution in kept]
