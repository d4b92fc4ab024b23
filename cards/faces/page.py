"""Pages of sheets of paper: the blocks of each in, faces with a number at their foot out."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, stacked
from tagend.cards.words.language import Wording
from tagend.fonts import Chain
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.text import SetLine, set_line
from tagend.layouts.stock.formats import Paper

MARGIN = 15 * MM
_FOOT = 10.0  # points


def pages(
    blocks: Sequence[Sequence[Block]], gap: float, paper: Paper, wording: Wording, fonts: Chain
) -> tuple[Face, ...]:
    """Return the faces of pages, each with its blocks within the margins and its number below."""
    return tuple(
        _page(stacked(of_page, gap), set_line(foot, fonts, _FOOT), paper)
        for of_page, foot in zip(blocks, _feet(len(blocks), wording), strict=True)
    )


def _feet(count: int, wording: Wording) -> list[str]:
    return [wording.say("page", number=number, count=count) for number in range(1, count + 1)]


def _page(block: Block, foot: SetLine, paper: Paper) -> Face:
    at_foot = foot.at(paper.width - MARGIN, paper.height - MARGIN, "right")
    items = (*shifted(block.items, MARGIN, MARGIN), *at_foot)
    return Face(foot.text, paper.width, paper.height, items)
