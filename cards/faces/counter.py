"""The counter sheet: all leaders of a shop in; pages that show them at a glance out."""

from collections.abc import Iterator, Sequence

from tagend.cards.faces.block import Block, Scale, filled, stacked, text_block
from tagend.cards.faces.diagram import diagram
from tagend.cards.faces.head import head
from tagend.cards.faces.imprint import Imprint, with_logo
from tagend.cards.faces.page import MARGIN, pages
from tagend.cards.faces.told import Told
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, Path, segment
from tagend.layouts.stock.formats import Paper

_FACTOR = 1.4  # of the type
_GAP = 10.0


def counter_sheet(
    all_told: Sequence[Told], imprint: Imprint, paper: Paper, fonts: Fonts
) -> tuple[Face, ...]:
    """Return the pages: each leader with its name, measure, use, tippet and drawing.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    width, scale, wording = paper.width - 2 * MARGIN, Scale(_FACTOR, fonts), all_told[0].wording

    def title(room: float) -> Block:
        words = imprint.name or wording.say("leaders")
        return text_block(words, scale.bold, 1.3 * scale.name, room)

    heading = with_logo(title, imprint.logo, scale, width)
    blocks = [heading, *_blocks(all_told, scale, width)]
    room = paper.height - 2 * MARGIN - 2 * scale.small
    return pages(filled(blocks, _GAP, room), _GAP, paper, wording, fonts.medium)


def _blocks(all_told: Sequence[Told], scale: Scale, width: float) -> Iterator[Block]:
    rule = Block((Path(segment(0, 0, width, 0), 0.5),), 4.0)
    for told in all_told:
        drawn = diagram(told, scale, width)
        yield stacked([rule, head(told, scale, width), drawn], 4.0)
