"""The counter sheet: all leaders of a shop in; pages that show them at a glance out."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, Scale, rule, stacked, text_block
from tagend.cards.faces.diagram import diagram
from tagend.cards.faces.head import head
from tagend.cards.faces.imprint import Imprint, with_logo
from tagend.cards.faces.page import Page
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face
from tagend.layouts.stock.formats import Paper

_FACTOR = 1.4  # of the type
_GAP = 10.0


def counter_sheet(
    all_told: Sequence[Told], imprint: Imprint, paper: Paper, fonts: Fonts
) -> tuple[Face, ...]:
    """Return the pages: each leader with its name, measure, use, tippet and drawing.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    page = Page(paper, Scale(_FACTOR, fonts), all_told[0].wording)
    scale, width = page.scale, page.width

    def title(room: float) -> Block:
        words = imprint.name or page.wording.say("leaders")
        return text_block(words, scale.bold, 1.3 * scale.name, room)

    leaders = (
        stacked([rule(width, 0.5, 4.0), head(told, scale, width), diagram(told, scale, width)], 4.0)
        for told in all_told
    )
    return page.faces([with_logo(title, imprint.logo, scale, width), *leaders], _GAP)
