"""Stock in, a page with its outline out, true to size, to hold against the real thing."""

from collections.abc import Sequence
from typing import TypeAlias

from msgspec import Struct

from tagend.fonts import Fonts
from tagend.layouts.paper.curves import rounded
from tagend.layouts.paper.face import MM, Face, Item, Path, rectangle, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.rulers import PEN
from tagend.layouts.paper.text import break_lines, set_below
from tagend.layouts.sheets.marks import EDGE
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper

Stocked: TypeAlias = Paper | CardSize | LabelSheet

OUTLINE = 0.5
NEXT = 7 * MM  # from an outline to the words below it
PAD = 3 * MM
NAME = 11.0
LEADING = 1.35


class OutlineWords(Struct, frozen=True):
    """What is said below an outline: what is told of the thing, and a rule of true size."""

    told: tuple[str, ...]
    rule: Face
    fonts: Fonts


def stock_outline(stock: Stocked, page: Paper, says: OutlineWords) -> Sheet:
    """Return a label sheet on its own paper; any other thing on the page, or on one of its size.

    Its name, what is told of it and a rule of true size stand below it, or in the middle. Raises
    TooWide where the page is too narrow for them.
    """
    if isinstance(stock, LabelSheet) and not stock.on_roll:
        outlines = [_outline(stock, x, y, stock.width, stock.height) for x, y in stock.places]
        return _page(stock.paper, outlines, _words(stock.name, says, stock.paper.width))
    words = _words(stock.name, says, page.width)
    room = page.height - 2 * EDGE - NEXT - words.height
    for width, height in ((stock.width, stock.height), (stock.height, stock.width)):
        if fits(width, page.width - 2 * EDGE) and fits(height, room):
            y = (page.height - height - NEXT - words.height) / 2
            outline = _outline(stock, (page.width - width) / 2, y, width, height)
            return _page(page, [outline], words, y + height + NEXT)
    whole = Paper(stock.name, stock.width, stock.height)
    outline = _outline(stock, 0, 0, stock.width, stock.height)
    return _page(whole, [outline], _words(stock.name, says, stock.width))


def _outline(stock: Stocked, x: float, y: float, width: float, height: float) -> Path:
    corner = 0.0 if isinstance(stock, Paper) else stock.corner
    return Path(rounded(x, y, width, height, corner), line=OUTLINE)


def _page(paper: Paper, outlines: Sequence[Path], words: Face, y: float | None = None) -> Sheet:
    x = (paper.width - words.width) / 2
    y = (paper.height - words.height) / 2 if y is None else y
    face = Face(name=words.name, width=paper.width, height=paper.height, items=tuple(outlines))
    return Sheet(paper.width, paper.height, (Placed(face, 0, 0), Placed(words, x, y)))


def _words(name: str, says: OutlineWords, page: float) -> Face:
    """Return the words in a white box, with the rule where it has room."""
    rule, fonts = says.rule, says.fonts
    inner = min(rule.width, page - 2 * EDGE - 2 * PAD)
    lines = list(break_lines(name, fonts.bold, NAME, inner))
    for text in says.told:
        lines += break_lines(text, fonts.medium, FLOOR, inner)
    runs, y = set_below(lines, PAD, PAD, LEADING)
    ruled: tuple[Item, ...] = ()
    if fits(rule.width, inner):
        ruled = shifted(rule.items, PAD, y + PAD / 2)
        y += PAD / 2 + rule.height
    width, height = inner + 2 * PAD, y + PAD
    frame = Path(rectangle(0, 0, width, height), line=2 * PEN, fill=1)
    return Face(name=name, width=width, height=height, items=(frame, *runs, *ruled))
