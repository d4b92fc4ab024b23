"""The counter sheet: all leaders of a shop in; pages that show them at a glance out."""

from collections.abc import Iterator, Sequence

from cards.faces.block import Block, Scale, filled, line_block, stacked
from cards.faces.diagram import diagram
from cards.faces.head import head
from cards.faces.imprint import with_logo
from cards.faces.page import MARGIN, pages
from cards.leader import Leader
from cards.materials import Materials
from cards.wording import Wording
from layouts.face import Face, Path, segment
from layouts.formats import Paper
from layouts.logo import Logo
from layouts.text import break_lines

_SCALE = Scale(1.4)
_GAP = 10.0


def counter_sheet(
    leaders: Sequence[Leader],
    materials: Materials,
    wording: Wording,
    title: str,
    paper: Paper,
    logo: Logo | None = None,
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
