"""Stock in, a dimensioned picture of it out, true to size, to hold against the real thing."""

from collections.abc import Sequence

from layouts.curves import rounded
from layouts.dimensions import Dimension, across, down, figure_size
from layouts.face import MM, Face, Item, Path
from layouts.formats import CardSize, LabelSheet, Paper
from layouts.ink import Box, apart
from layouts.legible import FLOOR
from layouts.lengths import fits, in_inches, in_mm, size_in_mm
from layouts.marks import EDGE
from layouts.measures import sheet_dimensions
from layouts.sheet import Placed, Sheet
from layouts.text import CAP_HEIGHT, set_line
from layouts.title import title_block

OUTLINE = 0.5
OUTSIDE = 7 * MM  # from an outline to the dimension line beside it
STEP = 3 * MM  # between the places that are tried for the title

Stocked = Paper | CardSize | LabelSheet


def stock_picture(stock: Stocked, page: Paper, advice: str) -> Sheet:
    """Return a sheet's own page; or a card, a label from a roll or a small paper on the page.

    `advice` is what is said below the measures. Raises TooWide where the page is too narrow.
    """
    if isinstance(stock, LabelSheet) and not stock.on_roll:
        return _sheet_picture(stock, _facts(stock), advice)
    upright = _outline_picture(stock, page, advice, stock.width, stock.height)
    lying = _outline_picture(stock, page, advice, stock.height, stock.width)
    return upright or lying or _sheet_picture(_whole(stock), _facts(stock), advice)


def _facts(stock: Stocked) -> list[str]:
    if not isinstance(stock, LabelSheet):
        kind = "paper" if isinstance(stock, Paper) else "card"
        return [f"{kind} of {_size(stock)}", *_corner(stock)]
    if stock.on_roll:
        return [f"label on a roll, {_size(stock)}", *_corner(stock)]
    return [
        f"{stock.columns} × {stock.rows} labels of {_size(stock)}",
        f"on {stock.paper.name}, {_size(stock.paper)}",
        *_corner(stock),
    ]


def _size(of: Stocked) -> str:
    inches = f"{in_inches(of.width).removesuffix(' in')} × {in_inches(of.height)}"
    return f"{size_in_mm(of.width, of.height)} · {inches}"


def _corner(of: Stocked) -> list[str]:
    radius = 0.0 if isinstance(of, Paper) else of.corner
    shown = f"{in_mm(radius)} · {in_inches(radius)}"
    if isinstance(of, LabelSheet) and of.shape == "round":
        return [f"round, of radius {shown}"]
    return [f"corners of radius {shown}"] if radius > 0 else []


def _whole(stock: Stocked) -> LabelSheet:
    """Return a thing as the one label on a sheet of its own size."""
    paper = Paper(stock.name, stock.width, stock.height)
    width, height = stock.width, stock.height
    measures = (width, height, 0.0, 0.0, width, height, 0.0)
    return LabelSheet(stock.name, paper, 1, 1, *measures, shape="rectangle", inset=0.0)


def _sheet_picture(stock: LabelSheet, facts: Sequence[str], advice: str) -> Sheet:
    width, height = stock.paper.width, stock.paper.height
    outlines = [_outline(stock, *place) for place in stock.places]
    dimensions = sheet_dimensions(stock)
    title = title_block(stock.name, facts, advice, width - 2 * EDGE)
    block = Placed(title, *_clear_spot(title, stock, dimensions))
    taken = [box for d in dimensions for box in (d.line_box, d.figure_box)]
    numbers = _numbers(stock, [*taken, (block.x, block.y, block.x + title.width, block.y + title.height)])
    face = Face(stock.name, width, height, (*outlines, *_drawn(dimensions), *numbers))
    return Sheet(width, height, (Placed(face, 0, 0), block))
