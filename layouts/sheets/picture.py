"""Stock in, a dimensioned picture of it out, true to size, to hold against the real thing."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import product
from typing import NamedTuple

from tagend.fonts import OURS, Fonts
from tagend.layouts.paper.curves import rounded
from tagend.layouts.paper.face import MM, Face, Item, Path, Step
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import CAP_HEIGHT, set_line
from tagend.layouts.sheets.dimensions import Dimension, across, down, figure_size
from tagend.layouts.sheets.ink import Box, apart
from tagend.layouts.sheets.margins import box_of
from tagend.layouts.sheets.marks import EDGE
from tagend.layouts.sheets.measures import sheet_dimensions
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.sheets.title import title_block
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper

OUTLINE = 0.5
OUTSIDE = 7 * MM  # from an outline to the dimension above it and the title below
NEXT = 3 * MM  # from an outline to the figure beside it
STEP = 3 * MM  # between the places that are tried for the title
CLEAR = 1 * MM

Stocked = Paper | CardSize | LabelSheet


class PictureWords(NamedTuple):
    """What is said on a picture."""

    told: Sequence[str]  # below the name of the thing
    rule: Face  # of true size
    fonts: Fonts
    number: Callable[[str], str]  # writes a measure in the language's style of numbers


def stock_picture(stock: Stocked, page: Paper, words: PictureWords) -> Sheet:
    """Return a label sheet on its own page; any other thing on the page, or on one of its size.

    Raises TooWide where a page is too narrow for the words.
    """
    if isinstance(stock, LabelSheet) and not stock.on_roll:
        return _sheet_picture(stock, words)
    for width, height in ((stock.width, stock.height), (stock.height, stock.width)):
        picture = _outline_picture(stock, width, height, page, words)
        if picture is not None:
            return picture
    return _sheet_picture(_whole(stock), words)


def _sheet_picture(stock: LabelSheet, words: PictureWords) -> Sheet:
    width, height = stock.paper.width, stock.paper.height
    dimensions = sheet_dimensions(stock)
    taken = [box for each in dimensions for box in (each.line_box, each.figure_box)]
    block = title_block(stock.name, words.told, words.rule, words.fonts, width - 2 * EDGE)
    title = Placed(block, *_title_place(block, stock, taken))
    outlines = (Path(_label_outline(stock, x, y), line=OUTLINE) for x, y in stock.places)
    drawn = _drawn(dimensions, words.number)
    items = (*outlines, *drawn, *_numbers(stock, [*taken, box_of(title)]))
    return Sheet(width, height, (Placed(Face(stock.name, width, height, items), 0, 0), title))


def _outline_picture(
    stock: Stocked, width: float, height: float, page: Paper, words: PictureWords
) -> Sheet | None:
    """Return the outline with its dimensions beside it and the title below; None without room."""
    block = title_block(stock.name, words.told, words.rule, words.fonts, page.width - 2 * EDGE)
    beside = NEXT + figure_size(height)[0] / 2  # from the outline to the upright dimension
    tall = height + 2 * OUTSIDE + block.height
    if not (fits(2 * beside + width, page.width - 2 * EDGE) and fits(tall, page.height - 4 * EDGE)):
        return None
    x = max((page.width - width) / 2, EDGE + 2 * beside)
    y = (page.height - tall) / 2 + OUTSIDE
    corner = 0.0 if isinstance(stock, Paper) else stock.corner
    dimensions = (across(x, x + width, y - OUTSIDE), down(y, y + height, x - beside))
    outline = Path(rounded(x, y, width, height, corner), line=OUTLINE)
    items = (outline, *_drawn(dimensions, words.number))
    title = Placed(block, (page.width - block.width) / 2, y + height + OUTSIDE)
    picture = Placed(Face(stock.name, page.width, page.height, items), 0, 0)
    return Sheet(page.width, page.height, (picture, title))


def _drawn(dimensions: Sequence[Dimension], number: Callable[[str], str]) -> Iterator[Item]:
    yield from (each.line for each in dimensions)
    for each in dimensions:
        yield from each.figure(number)


def _label_outline(stock: LabelSheet, x: float, y: float) -> tuple[Step, ...]:
    return rounded(x, y, stock.width, stock.height, stock.corner)


def _numbers(stock: LabelSheet, taken: Sequence[Box]) -> Iterator[Item]:
    """Yield the number of each label, where nothing else stands in its middle."""
    for number, (x, y) in enumerate(stock.places, start=1):
        line = set_line(f"{number}", OURS.medium, FLOOR)
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
