"""A page of a sheet of paper: a block and the words at its foot in, the face of the page out."""

from cards.faces.block import Block
from layouts.face import MM, Face, shifted
from layouts.formats import Paper
from layouts.text import set_line

MARGIN = 15 * MM
_FOOT = 10.0  # points


def page(block: Block, foot: str, paper: Paper) -> Face:
    """Return the face of a page, its block within the margins and its foot below that."""
    words = set_line(foot, "medium", _FOOT)
    at_foot = words.at(paper.width - MARGIN, paper.height - MARGIN, "right")
    items = (*shifted(block.items, MARGIN, MARGIN), *at_foot)
    return Face(foot, paper.width, paper.height, items)
