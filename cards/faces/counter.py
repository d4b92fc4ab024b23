"""The counter sheet: all leaders of a shop in; pages to choose from across a counter out.

All drawings are to one scale, so that lengths compare by eye, and stand by line weight.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    ended,
    rule,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.counter_strand import counter_strand
from tagend.cards.faces.imprint import Imprint, with_logo
from tagend.cards.faces.page import Page, Row
from tagend.cards.faces.plot import Plot, plots_alike
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.codes.code import QUIET, best_module
from tagend.layouts.paper.face import Code, Face, Symbol
from tagend.layouts.paper.text import TooWide, set_line
from tagend.layouts.stock.formats import Paper

_FACTOR = 60 / 40  # of the type: what a card has at 40 cm, this has at 60 cm
_ROOM = 9.0  # points at factor 1, for the thickest strand
_GAP = 10.0  # points
_SHARE = 0.3  # of the width, at most, for a code
_TITLE = 1.3  # of the size of a leader's name
_UNDER_TITLE = 8.0  # points
_TO_RULE = 2.0  # from a heading
_UNDER_RULE = 4.0
_TO_STRAND = 4.0


class Offer(Struct, frozen=True):
    """A leader as it is offered."""

    told: Told
    code: Symbol | None = None  # for a customer's phone

    @property
    def weight(self) -> int | None:
        return self.told.leader.recipe.line_weight


class _CodeColumn(Struct, frozen=True):
    """The place of the codes at the right of a page; of no width where there are none."""

    width: float = 0.0
    module: float = 0.0


def counter_sheet(
    offers: Sequence[Offer], imprint: Imprint, paper: Paper, fonts: Fonts
) -> tuple[Face, ...]:
    """Return the pages: leaders by line weight, those without one last, else in their order.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    scale, wording = Scale(_FACTOR, fonts), offers[0].told.wording
    name = imprint.name or wording.say("leaders")
    page = Page(paper, scale, wording, head=name)
    page = replace(page, title=_title(imprint, name, scale, page.width))
    column = _code_column(offers, page.width)
    in_order = sorted(offers, key=lambda offer: offer.weight or math.inf)
    room = page.width - column.width
    plots = plots_alike([offer.told for offer in in_order], scale, room, _ROOM * _FACTOR)
    notes = [wording.say("counter_key", factor=plots[0].factor)]
    notes += [wording.say("counter_codes")] if column.width else []
    key = small_lines(notes, scale, page.width)
    blocks = [
        _leader(offer, plotted, column, page.width)
        for offer, plotted in zip(in_order, plots, strict=True)
    ]
    return page.of_rows(_rows(in_order, blocks, key, page), _GAP)


def _rows(
    offers: Sequence[Offer], blocks: Sequence[Block], key: Block, page: Page
) -> Iterator[Row]:
    """Yield the leaders, the first of a weight with its heading; the key stands on each page."""
    say, several = page.wording.say, len({offer.weight for offer in offers}) > 1
    for weight, group in groupby(zip(offers, blocks, strict=True), lambda pair: pair[0].weight):
        words = say("weight", weight=weight) if weight else say("no_weight") if several else ""
        again = stacked([key, page.bold(say("continued", name=words) if words else "")], _GAP)
        for place, (offer, block) in enumerate(group):
            headed = block if place else stacked([page.bold(words), block], _TO_RULE)
            first = offer is offers[0]
            yield Row(stacked([key, headed], _GAP) if first else headed, again if place else key)


def _title(imprint: Imprint, name: str, scale: Scale, width: float) -> Block:
    """Return whose leaders they are, where that is, and the logo."""

    def words(room: float) -> Block:
        more = (imprint.address or "", imprint.line or "")
        return stacked(
            [
                text_block(name, scale.bold, _TITLE * scale.name, room),
                *(text_block(each, scale.medium, scale.body, room) for each in more),
            ]
        )

    block = with_logo(words, imprint.logo, scale, width)
    return Block(block.items, block.height + _UNDER_TITLE)


def _leader(offer: Offer, plotted: Plot, column: _CodeColumn, width: float) -> Block:
    """Return a leader: its name and measure, what it is for, its drawing, and its code beside."""
    scale, room, line = plotted.scale, width - column.width, rule(width, 0.5, _UNDER_RULE)
    texts = [_head(offer.told, scale, room), counter_strand(plotted, room)]
    words = stacked([line, stacked(texts, _TO_STRAND)])
    if offer.code is None:
        return words
    side, top = offer.code.side * column.module, QUIET * column.module
    code = Code(width - side, top, column.module, offer.code)
    return Block((*words.items, code), max(words.height, top + side))


def _head(told: Told, scale: Scale, width: float) -> Block:
    leader, recipe = told.leader, told.leader.recipe
    total = set_line(told.span(leader.finished), scale.bold, scale.name)
    more = (told.second_span(leader.finished), told.tippet(), told.droppers())
    try:
        name = text_block(recipe.name, scale.bold, scale.name, width - total.width - scale.name)
        title = ended(name, total, width)
    except TooWide:
        texts = (recipe.name, total.text)
        title = stacked(text_block(text, scale.bold, scale.name, width) for text in texts)
    return stacked([title, small_lines((recipe.use or "", _joined(more)), scale, width)])


def _joined(words: Iterable[str]) -> str:
    return " · ".join(filter(None, words))


def _code_column(offers: Sequence[Offer], width: float) -> _CodeColumn:
    """Return the column for the codes at the largest module; its right quiet zone is the margin."""
    sides = [offer.code.side for offer in offers if offer.code]
    if not sides:
        return _CodeColumn()
    side = max(sides)
    module = best_module(_SHARE * width, side)
    if module is None:
        raise TooSmall("the code of one of its leaders is too large for the page")
    return _CodeColumn((side + QUIET) * module, module)
