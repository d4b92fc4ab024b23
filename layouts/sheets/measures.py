"""A label sheet in; the dimension lines of all its measures, no figure on another, out."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import product

from tagend.layouts.paper.face import MM
from tagend.layouts.paper.lengths import SLACK
from tagend.layouts.sheets.dimensions import ARROW, Dimension, across, down, figure_size
from tagend.layouts.sheets.marks import EDGE
from tagend.layouts.stock.formats import LabelSheet

FRACTIONS = (0.5, 0.3, 0.7, 0.15, 0.85)  # of a label: where a line may run through it
NEXT = 1 * MM  # from an edge to the figure beside it


def sheet_dimensions(stock: LabelSheet) -> tuple[Dimension, ...]:
    """Return the size of a label, the pitches, and the margins on all four sides."""
    chosen: list[Dimension] = []
    for ways in (*_of_labels(stock), *_of_margins(stock)):
        clear = (way for way in ways if way.is_clear_of(chosen))
        chosen.append(next(clear, ways[0]))
    return tuple(chosen)


def _of_labels(stock: LabelSheet) -> Iterator[list[Dimension]]:
    """Yield, for each measure, the dimensions that would show it, the best first."""
    xs, ys, width, height = _lefts(stock), _tops(stock), stock.width, stock.height
    yield [across(xs[0], xs[0] + width, y) for y in _through(ys, height)]
    yield _upright(ys[0], ys[0] + height, _through(xs[::-1], width))
    if stock.columns > 1:
        yield [across(xs[0], xs[1], y) for y in _through([*ys[1:], ys[0]], height)]
    if stock.rows > 1:
        yield _upright(ys[-2], ys[-1], _through(xs[::-1], width))


def _of_margins(stock: LabelSheet) -> Iterator[list[Dimension]]:
    xs, ys, paper = _lefts(stock), _tops(stock), stock.paper
    levels = list(_through([*ys[2:], *ys[:2]], stock.height))
    uprights = list(_through(xs, stock.width))
    right, bottom = xs[-1] + stock.width, ys[-1] + stock.height
    if stock.left > SLACK:
        at = _figure_place(stock.left, 0)
        yield [across(0, stock.left, y, at) for y in levels]
    if paper.width - right > SLACK:
        at = paper.width - _figure_place(paper.width - right, 0)
        yield [across(right, paper.width, y, at) for y in levels]
    if stock.top > SLACK:
        at = _figure_place(stock.top, 1)
        yield [down(0, stock.top, x, at) for x in uprights]
    if paper.height - bottom > SLACK:
        at = paper.height - _figure_place(paper.height - bottom, 1)
        yield [down(bottom, paper.height, x, at) for x in uprights]


def _upright(start: float, end: float, xs: Iterable[float]) -> list[Dimension]:
    # Where the line of another dimension runs through the middle, the figure stands off it.
    places = [start + fraction * (end - start) for fraction in FRACTIONS]
    return [down(start, end, x, place) for x, place in product(xs, places)]


def _lefts(stock: LabelSheet) -> list[float]:
    return [stock.left + column * stock.pitch_x for column in range(stock.columns)]


def _tops(stock: LabelSheet) -> list[float]:
    return [stock.top + row * stock.pitch_y for row in range(stock.rows)]


def _through(starts: Sequence[float], size: float) -> Iterator[float]:
    """Yield where a line may run through labels: first the middle of each one."""
    for fraction in FRACTIONS:
        yield from (start + fraction * size for start in starts)


def _figure_place(margin: float, way: int) -> float:
    """Return how far from the sheet's edge the middle of a margin's figure stands.

    It keeps clear of the edge, where printers leave the paper white; without room in the margin
    it stands in the label.
    """
    half = figure_size(margin)[way] / 2
    place = max(margin / 2, EDGE + NEXT + half)
    return place if margin - place - half >= ARROW + NEXT else max(place, margin + NEXT + half)
