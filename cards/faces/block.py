"""Blocks: parts of a face that are set once and stacked down a panel."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import accumulate

from msgspec import Struct

from tagend.fonts import Chain, Fonts
from tagend.layouts.paper.face import Item, Path, segment, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.text import SetLine, broken, set_line

LEADING = 1.15  # from one line to the next, in type sizes: the least for single lines (print use)
DROP = 0.82  # from the top of a line to its baseline, in type sizes


class TooSmall(ValueError):
    """A face is too small for its content in type that may be printed."""


class Block(Struct, frozen=True):
    """Items set from (0, 0) downwards, and the height that they take, in points.

    Of many blocks that are tried few are printed, so that most set their items when asked for them.
    """

    set_items: tuple[Item, ...] | Callable[[], tuple[Item, ...]]
    height: float

    @property
    def items(self) -> tuple[Item, ...]:
        """Return what stands in it."""
        return self.set_items() if callable(self.set_items) else self.set_items


class Scale(Struct, frozen=True):
    """The type of a face: fonts, and sizes in points that are one scale, larger or smaller."""

    factor: float
    fonts: Fonts
    stretch: float = 1.0  # of the table's rows, where there is room

    @property
    def medium(self) -> Chain:
        return self.fonts.medium

    @property
    def bold(self) -> Chain:
        return self.fonts.bold

    @property
    def name(self) -> float:
        return 13 * self.factor

    @property
    def cut(self) -> float:
        return 11 * self.factor

    @property
    def body(self) -> float:
        return 9 * self.factor

    @property
    def small(self) -> float:
        """At factor 1, the smallest type that may be printed."""
        return FLOOR * self.factor

    @property
    def pitch(self) -> float:
        """From one row of the table to the next."""
        return 11.9 * self.factor * self.stretch


def line_block(line: SetLine) -> Block:
    """Return one set line as a block."""
    return Block(lambda: line.at(0.0, DROP * line.size), LEADING * line.size)


def rule(width: float, line: float, height: float) -> Block:
    """Return a rule of a width, with room below it."""
    return Block((Path(segment(0, 0, width, 0), line),), height)


@lru_cache(maxsize=4096)  # a card is tried in many ways, of which most have the same lines
def text_block(words: str, fonts: Chain, size: float, width: float) -> Block:
    """Return words in as many lines as they take. Raises `TooWide` and `NoGlyph`."""

    def line(of: str) -> Block:
        return Block(lambda: line_block(set_line(of, fonts, size)).items, LEADING * size)

    return stacked(map(line, broken(words, fonts, size, width)))


def small_lines(texts: Iterable[str], scale: Scale, width: float) -> Block:
    """Return texts in small type, each on lines of its own."""
    return stacked(text_block(text, scale.medium, scale.small, width) for text in texts)


@lru_cache(maxsize=1024)
def hung(mark: str, words: str, scale: Scale, width: float) -> Block:
    """Set small words with a bold mark, such as a step's number, hanging at their left."""
    indent = 1.1 * scale.small
    text = text_block(words, scale.medium, scale.small, width - indent)
    return beside([line_block(set_line(mark, scale.bold, scale.small)), text], indent)


def led(name: str, words: str, scale: Scale, width: float) -> Block:
    """Set small words after their name in bold, or below it where they are too long for that."""
    line, more = (
        set_line(text, fonts, scale.small)
        for text, fonts in ((name, scale.bold), (words, scale.medium))
    )
    start = line.width + scale.small
    if start + more.width <= width:
        return beside([line_block(line), line_block(more)], start)
    bold = text_block(name, scale.bold, scale.small, width)
    return stacked([bold, small_lines([words], scale, width)])


def ended(block: Block, end: SetLine, width: float) -> Block:
    """Return a block with another text at the right end of its first line."""

    def items() -> tuple[Item, ...]:
        return (*block.items, *end.at(width, DROP * end.size, "right"))

    return Block(items, max(block.height, LEADING * end.size))


def beside(blocks: Iterable[Block], step: float) -> Block:
    """Return blocks side by side as one block, each `step` to the right of the one before."""
    columns = list(blocks)

    def items() -> Iterator[Item]:
        for n, each in enumerate(columns):
            yield from shifted(each.items, n * step, 0)

    return Block(lambda: tuple(items()), max(each.height for each in columns))


def stacked(blocks: Iterable[Block], gap: float = 0.0) -> Block:
    """Return blocks one below the other as one block, `gap` apart."""
    column = list(blocks)
    *tops, end = accumulate((block.height + gap for block in column), initial=0.0)

    def items() -> Iterator[Item]:
        for block, top in zip(column, tops, strict=True):
            yield from shifted(block.items, 0, top)

    return Block(lambda: tuple(items()), max(end - gap, 0.0))


def stack_height(blocks: Sequence[Block], gap: float) -> float:
    """Return how high blocks stand, one below the other and `gap` apart."""
    return sum(block.height for block in blocks) + gap * max(len(blocks) - 1, 0)


def filled(
    blocks: Iterable[Block],
    gap: float,
    height: float,
    over: Callable[[int], Sequence[Block]] = lambda _: (),
) -> list[list[Block]]:
    """Return the blocks in their order on as few panels of a height as they take.

    `over` gives what stands first on a panel, by its number from 0, and gives way to a block that
    needs the whole height. Raises `TooSmall` for a block that is higher still.
    """
    panels: list[list[Block]] = []
    for block in blocks:
        if panels and stack_height([*panels[-1], block], gap) <= height:
            panels[-1].append(block)
            continue
        if block.height > height:
            raise TooSmall("a part of it is higher than the space there is")
        headed = [*over(len(panels)), block]
        panels.append(headed if stack_height(headed, gap) <= height else [block])
    return panels
