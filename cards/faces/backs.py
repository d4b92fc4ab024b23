"""What stands behind a card's front: what it says and how full it is to be in; blocks out."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import repeat
from typing import TypeAlias, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import Block, Scale, hung, small_lines
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.code_block import code_block
from tagend.cards.faces.diagram import diagrams
from tagend.cards.faces.front import Fronts
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.faces.lesson import HEIGHTS, Words, drops_frames, has_figure, lesson_block
from tagend.cards.words.lessons import Lesson

_FIRST = 1  # caution is never left out, nor are those of wire
_WET = "wet"  # the caution that says how any knot is seated


class Fullness(Struct, frozen=True):
    """How much of what is no must stands on a card; the least is all that must."""

    heights: tuple[float, ...]  # of each strip; one that needs more has it
    words: tuple[Words, ...]  # below each strip
    cautions: int = 0  # more than must stand there
    renewals: bool = False
    variants: bool = False
    drawing: bool = False

    @staticmethod
    def least(lessons: int) -> "Fullness":
        """Return what must be."""
        none: Words = "none"
        return Fullness(HEIGHTS[:1] * lessons, (none,) * lessons)

    @staticmethod
    def ample(lessons: int) -> "Fullness":
        """Return what is worth more than type that is larger than it must be."""
        seat: Words = "seat"
        return Fullness(
            HEIGHTS[1:2] * lessons, (seat,) * lessons, cautions=2, renewals=True, variants=True
        )

    @property
    def seated(self) -> bool:
        """Whether each knot is told how it is seated, so that it need not be said of all."""
        return "none" not in self.words


T = TypeVar("T")
Missing: TypeAlias = tuple[str, ...]  # by the names of `left_out`
Change: TypeAlias = Callable[[Fullness], Fullness]


def back_blocks(
    text: CardText,
    left: Sequence[str],
    scale: Scale,
    width: float,
    full: Fullness,
) -> list[list[Block]] | None:
    """Return groups of blocks that keep their order; `left` is what the front has no room for.

    None where the code or a figure is wider than the width. Raises `TooWide`.
    """
    code = code_block(text.symbol, text.legend, scale, width)
    knots = [_taught(each, scale, width, full, place) for place, each in enumerate(text.lessons)]
    if code is None or None in knots:
        return None
    asked = (left, text.shopping, text.renewals * full.renewals, text.variants * full.variants)
    drawing = list(diagrams(text.told, scale, width))[:1] if full.drawing else []
    blocks = [
        drawing,
        *([block] for block in knots if block is not None),
        [code],
        _care(text, scale, width, full),
        *([small_lines(lines, scale, width)] for lines in asked if lines),
        [imprint_block(text.imprint, scale, width)],
    ]
    return [group for group in blocks if group and group[0].height]


def wishes(text: CardText, front: Fronts) -> Iterator[Change]:
    """Yield what a card is to say where it has room, the most important first."""

    def caution(full: Fullness) -> Fullness:
        return replace(full, cautions=full.cautions + 1)

    def higher(height: float) -> Iterator[Change]:
        yield from (partial(_higher, place, height) for place in places)

    def worded(words: Words) -> Iterator[Change]:
        yield from (partial(_worded, place, words) for place in places)

    places = range(len(text.lessons))
    more = len(text.cautions) - _FIRST
    yield from repeat(caution, min(more, 1))
    yield from worded("seat")
    for height in HEIGHTS[1:4]:
        yield from higher(height)
    yield from repeat(caution, min(max(more - 1, 0), 1))
    if not front.drawn:
        yield lambda full: replace(full, drawing=True)
    if text.renewals:
        yield lambda full: replace(full, renewals=True)
    if text.variants:
        yield lambda full: replace(full, variants=True)
    for height in HEIGHTS[4:6]:
        yield from higher(height)
    yield from worded("steps")
    yield from repeat(caution, max(more - 2, 0))
    for height in HEIGHTS[6:]:
        yield from higher(height)


def left_out(text: CardText, full: Fullness, scale: Scale, width: float) -> Missing:
    """Return what of a card's text does not stand on it, but for the less important cautions."""
    strips = zip(text.lessons, full.heights, strict=True)
    missing = {
        "frames": any(drops_frames(lesson, scale, width, high) for lesson, high in strips),
        "seats": any(
            words == "none" and has_figure(lesson) and bool(lesson.seat)
            for lesson, words in zip(text.lessons, full.words, strict=True)
        ),
        "renewals": bool(text.renewals) and not full.renewals,
        "variants": bool(text.variants) and not full.variants,
    }
    return tuple(what for what, is_missing in missing.items() if is_missing)


def _higher(place: int, height: float, full: Fullness) -> Fullness:
    return replace(full, heights=_put(full.heights, place, height))


def _worded(place: int, words: Words, full: Fullness) -> Fullness:
    return replace(full, words=_put(full.words, place, words))


def _put(values: tuple[T, ...], place: int, value: T) -> tuple[T, ...]:
    return (*values[:place], value, *values[place + 1 :])


def _taught(lesson: Lesson, scale: Scale, width: float, full: Fullness, place: int) -> Block | None:
    """Return a lesson with its figure as high as it is to be, or higher where it must be."""
    words, least = full.words[place], HEIGHTS.index(full.heights[place])
    for height in HEIGHTS[least:] if has_figure(lesson) else HEIGHTS[least : least + 1]:
        block = lesson_block(lesson, scale, width, height, words)
        if block is not None:
            return block
    return None


def _care(text: CardText, scale: Scale, width: float, full: Fullness) -> list[Block]:
    """Return the cautions that must stand, and so many more, in their order."""
    kept = [
        caution
        for place, caution in enumerate(text.cautions)
        if place < _FIRST + full.cautions
        or caution.when == "wire"
        or (caution.name == _WET and not full.seated)
    ]
    return [hung("!", caution.short, scale, width) for caution in kept]
