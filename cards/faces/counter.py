"""The counter sheet: all leaders of a shop in; pages that show them at a glance out."""

from collections.abc import Iterator, Sequence

from tagend.cards.faces.block import Block, Scale, filled, line_block, stacked
from tagend.cards.faces.diagram import diagram
from tagend.cards.faces.head import head
from tagend.cards.faces.imprint import with_logo
from tagend.cards.faces.page import MARGIN, pages
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.materials import Materials
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Face, Path, segment
from tagend.layouts.paper.raster import Raster
from tagend.layouts.paper.text import break_lines
from tagend.layouts.stock.formats import Paper

_SCALE = Scale(1.4)
_GAP = 10.0


def counter_sheet(
    leaders: Sequence[Leader],
    materials: Materials,
    wording: Wording,
    title: str,
    paper: Paper,
    logo: Raster | None = None,
) -> tuple[Face, ...]:
    """Return the pages: each leader with its name, measure, use, tippet and drawing.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    width = paper.width - 2 * MARGIN
    heading = with_logo(lambda room: _title(title, room), logo, _SCALE, width)
    blocks = [heading, *_blocks(leaders, materials, wording, width)]
    room = paper.height - 2 * MARGIN - 2 * _SCALE.small
    return pages(filled(blocks, _GAP, room), _GAP, paper, wording)


def _title(title: str, width: float) -> Block:
    lines = break_lines(title, "bold", 1.3 * _SCALE.name, width)
    return stacked(line_block(line) for line in lines)


def _blocks(
    leaders: Sequence[Leader], materials: Materials, wording: Wording, width: float
) -> Iterator[Block]:
    rule = Block((Path(segment(0, 0, width, 0), 0.5),), 4.0)
    for leader in leaders:
        drawn = diagram(leader, materials, wording, _SCALE, width)
        yield stacked([rule, head(leader, wording, _SCALE, width), drawn], 4.0)
