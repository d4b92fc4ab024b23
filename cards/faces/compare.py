"""Leaders compared on one page: leaders in, their plots, measures and differences out."""

from collections.abc import Iterator, Sequence
from contextlib import suppress

from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    beside,
    small_lines,
    stack_height,
    stacked,
)
from tagend.cards.faces.cell_table import cell_table
from tagend.cards.faces.chart import comparison, sample
from tagend.cards.faces.page import Page
from tagend.cards.words.compare_words import Compared, compared
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.lengths import SLACK
from tagend.layouts.paper.text import TooWide
from tagend.layouts.stock.formats import Paper

_FACTORS = (1.2, 1.1, 1.0)  # of the type: the largest that the page holds
_GAP = 9.0  # points
_PLOTS, _LEAST, _MOST = 3, 75.0, 150.0  # how many, and their height in points


def comparison_page(all_told: Sequence[Told], paper: Paper, fonts: Fonts) -> Face:
    """Return the page. Raises `TooSmall` and `TooWide` where the paper is too small."""
    *larger, least = _FACTORS
    for factor in larger:
        with suppress(TooSmall, TooWide):
            return _page(all_told, paper, Scale(factor, fonts))
    return _page(all_told, paper, Scale(least, fonts))


def _page(all_told: Sequence[Told], paper: Paper, scale: Scale) -> Face:
    page = Page(paper, scale, all_told[0].wording)
    told = compared(all_told)
    above = stacked(_key(all_told, told, page), 3.0)
    below = [
        cell_table(told.table, page.scale, page.width),
        small_lines(told.notes, page.scale, page.width),
    ]
    free = page.height - stack_height([above, *below], _GAP) - _PLOTS * _GAP - SLACK
    height = max(_LEAST, min(_MOST, free / _PLOTS))
    plots = comparison(all_told, page.scale, page.width, height)
    blocks = [above, *plots, *below]
    return page.face(blocks, _GAP)


def _key(all_told: Sequence[Told], told: Compared, page: Page) -> Iterator[Block]:
    """Yield each leader with the line that it is drawn with and what sets it apart."""
    scale = page.scale
    indent = 4 * scale.small
    for place, (each, differs) in enumerate(zip(all_told, told.differs, strict=True)):
        name = page.bold(each.leader.recipe.name, page.width - indent)
        words = small_lines(filter(None, [differs]), scale, page.width - indent)
        yield beside([sample(place, scale), stacked([name, words])], indent)
    if told.alike:
        yield small_lines([told.alike], scale, page.width)
