"""Pages of sheets of paper: blocks in; as few faces as hold them, a number at their foot, out."""

from collections.abc import Iterable
from dataclasses import dataclass

from tagend.cards.faces.block import Block, Scale, filled, stacked, text_block
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.text import set_line
from tagend.layouts.stock.formats import Paper

MARGIN = 15 * MM
_FOOT = 10.0  # points


@dataclass(frozen=True, slots=True)
class Page:
    """The room within the margins of a paper at one scale of type, and how it is worded."""

    paper: Paper
    scale: Scale
    wording: Wording

    @property
    def width(self) -> float:
        return self.paper.width - 2 * MARGIN

    @property
    def height(self) -> float:
        """Without the foot."""
        return self.paper.height - 2 * MARGIN - 2 * self.scale.small

    def bold(self, words: str, width: float | None = None) -> Block:
        """Return words in bold body type, in the page's width or another."""
        return text_block(words, self.scale.bold, self.scale.body, width or self.width)

    def faces(self, blocks: Iterable[Block], gap: float) -> tuple[Face, ...]:
        """Return pages with the blocks in their order. Raises `TooSmall`."""
        pages = filled(blocks, gap, self.height)
        say = self.wording.say
        feet = (say("page", number=n, count=len(pages)) for n in range(1, len(pages) + 1))
        return tuple(
            self._face(stacked(of_page, gap), foot)
            for of_page, foot in zip(pages, feet, strict=True)
        )

    def face(self, blocks: Iterable[Block], gap: float) -> Face:
        """Return one page with all the blocks. Raises `TooSmall`."""
        faces = self.faces([stacked(blocks, gap)], gap)
        return faces[0]

    def _face(self, block: Block, foot: str) -> Face:
        width, height = self.paper.width, self.paper.height
        line = set_line(foot, self.scale.medium, _FOOT)
        at_foot = line.at(width - MARGIN, height - MARGIN, "right")
        return Face(foot, width, height, (*shifted(block.items, MARGIN, MARGIN), *at_foot))
