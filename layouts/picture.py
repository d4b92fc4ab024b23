"""Stock in, a dimensioned picture of it out, true to size, to hold against the real thing."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import product

from layouts.curves import rounded
from layouts.dimensions import Dimension, across, down, figure_size
from layouts.face import MM, Face, Item, Path, Step
from layouts.formats import CardSize, LabelSheet, Paper
from layouts.ink import Box, apart
from layouts.legible import FLOOR
from layouts.lengths import fits, in_inches, in_mm, size_in_mm
from layouts.margins import box_of
from layouts.marks import EDGE
from layouts.measures import sheet_dimensions
from layouts.sheet import Placed, Sheet
from layouts.text import CAP_HEIGHT, set_line
from layouts.title import title_block

OUTLINE = 0.5
OUTSIDE = 7 * MM  # from an outline to the dimension above it and the title below
NEXT = 3 * MM  # from an outline to the figure beside it
STEP = 3 * MM  # between the places that are tried for the title
CLEAR = 1 * MM

Stocked = Paper | CardSize | LabelSheet


def stock_picture(stock: Stocked, page: Paper, advice: str) -> Sheet:
    """Return a label sheet on its own page; any other thing on the page, or on one of its size.

    `advice` is said below the measures. Raises TooWide where a page is too narrow for that.
    """
    if isinstance(stock, LabelSheet) and not stock.on_roll:
        return _sheet_picture(stock, _facts(stock), advice)
    for width, height in ((stock.width, stock.height), (stock.height, stock.width)):
        picture = _outline_picture(stock, width, height, page, advice)
        if picture is not None:
            return picture
    return _sheet_picture(_whole(stock), _facts(stock), advice)


def _sheet_picture(stock: LabelSheet, facts: Sequence[str], advice: str) -> Sheet:
    width, height = stock.paper.width, stock.paper.height
    dimensions = sheet_dimensions(stock)
    taken = [box for each in dimensions for box in (each.line_box, each.figure_box)]
    block = title_block(stock.name, facts, advice, width - 2 * EDGE)
    title = Placed(block, *_title_place(block, stock, taken))
    outlines = (Path(_label_outline(stock, x, y), line=OUTLINE) for x, y in stock.places)
    items = (*outlines, *_drawn(dimensions), *_numbers(stock, [*taken, box_of(title)]))
    return Sheet(width, height, (Placed(Face(stock.name, width, height, items), 0, 0), title))


def _outline_picture(
    stock: Stocked, width: float, height: float, page: Paper, advice: str
) -> Sheet | None:
    """Return the outline with its dimensions beside it and the title below; None without room."""
    block = title_block(stock.name, _facts(stock), advice, page.width - 2 * EDGE)
    beside = NEXT + figure_size(height)[0] / 2  # from the outline to the upright dimension
    tall = height + 2 * OUTSIDE + block.height
    if not (fits(2 * beside + width, page.width - 2 * EDGE) and fits(tall, page.height - 4 * EDGE)):
        return None
    x = max((page.width - width) / 2, EDGE + 2 * beside)
    y = (page.height - tall) / 2 + OUTSIDE
    corner = 0.0 if isinstance(stock, Paper) else stock.corner
    dimensions = (across(x, x + width, y - OUTSIDE), down(y, y + height, x - beside))
    items = (Path(rounded(x, y, width, height, corner), line=OUTLINE), *_drawn(dimensions))
    title = Placed(block, (page.width - block.width) / 2, y + height + OUTSIDE)
    picture = Placed(Face(stock.name, page.width, page.height, items), 0, 0)
    return Sheet(page.width, page.height, (picture, title))


def _drawn(dimensions: Sequence[Dimension]) -> Iterator[Item]:
    yield from (each.line for each in dimensions)
    for each in dimensions:
        yield from each.figure


def _label_outline(stock: LabelSheet, x: float, y: float) -> tuple[Step, ...]:
    return rounded(x, y, stock.width, stock.height, stock.corner)


def _numbers(stock: LabelSheet, taken: Sequence[Box]) -> Iterator[Item]:
    """Yield the number of each label, where nothing else stands in its middle."""
    for number, (x, y) in enumerate(stock.places, start=1):
        line = set_line(f"{number}", "medium", FLOOR)
        middle, cap = x + stock.width / 2, CAP_HEIGHT * FLOOR
        base = y + (stock.height + cap) / 2
        box = (middle - line.width / 2, base - cap, middle + line.width / 2, base)
        if all(apart(box, other, CLEAR) for other in taken):
            yield from line.at(middle, base, "centre")


def _title_place(block: Face, stock: LabelSheet, taken: Sequence[Box]) -> tuple[float, float]:
    """Return the place nearest to the sheet's middle where the block hides no dimension.

    One inside a label comes first, since it hides no outline either.
    """
    paper = stock.paper
    middle = ((paper.width - block.width) / 2, (paper.height - block.height) / 2)
    inside = (
        (x + (stock.width - block.width) / 2, y + (stock.height - block.height) * share)
        for (x, y), share in product(stock.places, (0.5, 0.75, 0.25))
        if block.width + 2 * EDGE <= stock.width and block.height + 2 * EDGE <= stock.height
    )
    for places in (inside, _grid(block, paper)):
        for x, y in sorted(places, key=lambda place: _off(place, middle)):
            box = (x, y, x + block.width, y + block.height)
            if all(apart(box, other, CLEAR) for other in taken):
                return x, y
    return middle


def _grid(block: Face, paper: Paper) -> Iterable[tuple[float, float]]:
    across_room, down_room = (
        paper.width - 2 * EDGE - block.width,
        paper.height - 2 * EDGE - block.height,
    )
    columns, rows = int(across_room / STEP), int(down_room / STEP)
    return (
        (EDGE + across_room * k / max(columns, 1), EDGE + down_room * n / max(rows, 1))
        for k, n in product(range(columns + 1), range(rows + 1))
    )


def _off(place: tuple[float, float], middle: tuple[float, float]) -> float:
    return (place[0] - middle[0]) ** 2 + (place[1] - middle[1]) ** 2


def _whole(stock: Stocked) -> LabelSheet:
    """Return a thing as the one label on a sheet of its own size."""
    width, height = stock.width, stock.height
    paper = Paper(stock.name, width, height)
    return LabelSheet(
        stock.name, paper, 1, 1, width, height, 0, 0, width, height, 0, "rectangle", 0
    )


def _facts(stock: Stocked) -> list[str]:
    if isinstance(stock, Paper):
        return [f"paper, {_size(stock)}"]
    if isinstance(stock, CardSize):
        return [f"card, {_size(stock)}", *_corner(stock.corner)]
    corner = [f"round, of radius {_both(stock.corner)}"]
    if stock.shape == "rectangle":
        corner = _corner(stock.corner)
    if stock.on_roll:
        return [f"label on a roll, {_size(stock)}", *corner]
    count = f"{stock.columns} × {stock.rows} labels, {_size(stock)}"
    return [count, *corner, f"on {stock.paper.name}, {_size(stock.paper)}"]


def _corner(radius: float) -> list[str]:
    return [f"corners of radius {_both(radius)}"] if radius > 0 else []


def _both(length: float) -> str:
    return f"{in_mm(length)} · {in_inches(length)}"


def _size(of: Stocked) -> str:
    across_inches = in_inches(of.width).removesuffix(" in")
    return f"{size_in_mm(of.width, of.height)} · {across_inches} × {in_inches(of.height)}"
