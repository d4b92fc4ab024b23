"""Pages of sheets of paper: blocks in; as few faces as hold them, each with its number, out."""

from collections.abc import Iterable
from typing import NamedTuple

from msgspec import Struct

from tagend.cards.faces.block import (
    DROP,
    Block,
    Scale,
    TooSmall,
    rule,
    stack_height,
    stacked,
    text_block,
)
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import set_line
from tagend.layouts.stock.formats import Paper

MARGIN = 15 * MM
NARROW_MARGIN = 10 * MM  # of a sheet to work from, which wants all the room
_NUMBER = 10.0  # points, the type of the page's number and of a running head
_UNDER_HEAD = 6.0


class Row(NamedTuple):
    """A part of a page, and what is repeated over it where it starts another page."""

    block: Block
    over: Block | None = None


class Page(Struct, frozen=True):
    """The room within the margins of a paper at one scale of type, and how it is worded.

    With a running head, the page's number stands at its right end, else at the foot. A title
    stands instead of both on the first page.
    """

    paper: Paper
    scale: Scale
    wording: Wording
    head: str = ""
    margin: float = MARGIN
    title: Block | None = None

    @property
    def width(self) -> float:
        return self.paper.width - 2 * self.margin

    @property
    def height(self) -> float:
        """Without head and foot, of every page but one with a title."""
        return self._room(2)

    def bold(self, words: str, width: float | None = None) -> Block:
        """Return words in bold body type, in the page's width or another."""
        return text_block(words, self.scale.bold, self.scale.body, width or self.width)

    def faces(self, blocks: Iterable[Block], gap: float) -> tuple[Face, ...]:
        """Return pages with the blocks in their order. Raises `TooSmall`."""
        return self.of_rows((Row(block) for block in blocks), gap)

    def of_rows(self, rows: Iterable[Row], gap: float) -> tuple[Face, ...]:
        """Return pages with the rows in their order. Raises `TooSmall`."""
        pages = self.filled(rows, gap)
        return tuple(
            self._face(stacked(of_page, gap), n, len(pages))
            for n, of_page in enumerate(pages, start=1)
        )

    def filled(self, rows: Iterable[Row], gap: float) -> list[list[Block]]:
        """Return the blocks of each page. Raises `TooSmall`."""
        pages: list[list[Block]] = []
        for block, over in rows:
            if pages and fits(stack_height([*pages[-1], block], gap), self._room(len(pages))):
                pages[-1].append(block)
                continue
            started = [over, block] if over and pages else [block]
            if not fits(stack_height(started, gap), self._room(len(pages) + 1)):
                raise TooSmall("a part of it is higher than the space there is")
            pages.append(started)
        return pages

    def face(self, blocks: Iterable[Block], gap: float) -> Face:
        """Return one page with all the blocks. Raises `TooSmall`."""
        faces = self.faces([stacked(blocks, gap)], gap)
        return faces[0]

    def _room(self, number: int) -> float:
        """Return what the blocks of a page have, the first being 1."""
        top = self._top(number)
        foot = 0.0 if top.height else 2 * self.scale.small
        return self.paper.height - 2 * self.margin - top.height - foot

    def _top(self, number: int) -> Block:
        if number == 1 and self.title is not None:
            return self.title
        return self._head() if self.head else Block((), 0.0)

    def _head(self) -> Block:
        """Return the running head with a rule below it, and room for a number at its right."""
        number = set_line(self.wording.say("page", number=999, count=999), self.scale.bold, _NUMBER)
        room = self.width - number.width - _NUMBER
        words = text_block(self.head, self.scale.bold, _NUMBER, room)
        return stacked([words, rule(self.width, 1.0, _UNDER_HEAD)], 2.0)

    def _face(self, block: Block, number: int, count: int) -> Face:
        width, height, margin = self.paper.width, self.paper.height, self.margin
        words, top = self.wording.say("page", number=number, count=count), self._top(number)
        at = margin + DROP * _NUMBER if self.head else height - margin
        line = set_line(words, self.scale.medium, _NUMBER)
        items = (
            *shifted(top.items, margin, margin),
            *shifted(block.items, margin, margin + top.height),
            *(() if top is self.title else line.at(width - margin, at, "right")),
        )
        return Face(words, width, height, items)
