"""Pages of sheets of paper: the blocks of each in, faces with a number at their foot out."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, stacked
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.text import set_line
from tagend.layouts.stock.formats import Paper

MARGIN = 15 * MM
_FOOT = 10.0  # points


def pages(
    blocks: Sequence[Sequence[Block]], gap: float, paper: Paper, wording: Wording
) -> tuple[Face, ...]:
    """Return the faces of pages, each with its blocks within the margins and its number below."""
    return tuple(
        _page(stacked(of_page, gap), wording.say("page", number=number, count=len(blocks)), paper)
        for number, of_page in enumerate(blocks, start=1)
    )


def _page(block: Block, foot: str, paper: Paper) -> Face:
    words = set_line(foot, "medium", _FOOT)
    at_foot = words.at(paper.width - MARGIN, paper.height - MARGIN, "right")
    items = (*shifted(block.items, MARGIN, MARGIN), *at_foot)
    return Face(foot, paper.width, paper.height, items)
