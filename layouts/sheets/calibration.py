"""A paper in; the pages by which a person measures a printer with a ruler out."""

from collections.abc import Callable, Sequence
from typing import Literal, NamedTuple, TypeAlias

from tagend.fonts import OURS, Chain
from tagend.layouts.paper.face import MM, Face, Item, Path, mapped
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.paper.rulers import PEN
from tagend.layouts.paper.text import CAP_HEIGHT, break_lines, set_line
from tagend.layouts.sheets.cutouts import turning_axis
from tagend.layouts.sheets.ink import Box
from tagend.layouts.sheets.margins import cross
from tagend.layouts.sheets.printer import MARK, RULE
from tagend.layouts.sheets.scales import TOOTH, comb, counter_comb, edge_scale, long_rule
from tagend.layouts.sheets.sheet import Placed, Sheet, SheetSide
from tagend.layouts.stock.formats import Paper

Edge: TypeAlias = Literal["long-edge", "short-edge"]
Through: TypeAlias = Callable[[float, float], tuple[float, float]]

LEAST = (139 * MM, 205 * MM)  # of a paper: room for the rules, and for English beside them
SIZES = (10.0, 9.0, 8.0, FLOOR)
TITLE = 14.0
LEADING, BETWEEN = 1.25, 0.5  # of lines, and between two steps

_RULE_X, _RULE_Y = 44 * MM, 25 * MM  # from the top and from the right edge
_COMB_X, _COMB_Y = 42 * MM, 48 * MM  # from the bottom and from the right edge of the front
_BESIDE = 2 * TOOTH  # what a comb needs to either side
_LEFT, _TOP = 40 * MM, 60 * MM  # where words may begin: past the scale and the level rule or comb


class CalibrationWords(NamedTuple):
    """What is said on the pages: a title and the steps of each side, and below the combs' fronts.

    The scales and rules bear the keys of a printer's measures, which no language changes.
    """

    front_title: str
    front: tuple[str, ...]
    back_title: str
    back: tuple[str, ...]
    combs: str


class TooSmallToMeasure(ValueError):
    """A paper has no room for the scales, or for words beside them; holds its size in points."""

    def __init__(self, paper: Paper) -> None:
        self.size = (paper.width, paper.height)
        super().__init__(
            f"{paper.name}, {size_in_mm(*self.size)}, is too small to measure a printer with; "
            "use a larger one, such as A5 or Letter"
        )


def calibration_sheets(
    paper: Paper, words: CalibrationWords, edge: Edge | None = None
) -> tuple[Sheet, ...]:
    """Return the front, and for a printer that turns the paper at an edge the back.

    Raises TooSmallToMeasure.
    """
    if paper.width < LEAST[0] or paper.height < LEAST[1]:
        raise TooSmallToMeasure(paper)
    if edge is None:
        return (_front(paper, words, ()),)
    through = _through(paper, edge)
    combs = _combs_in_front(paper, words.combs, through)
    return _front(paper, words, combs), _back(paper, words, through)


def _through(paper: Paper, edge: Edge) -> Through:
    """Return what takes a place on one side to where it is seen from the other."""
    if turning_axis(paper.width, paper.height, edge) == "upright":
        return lambda x, y: (paper.width - x, y)
    return lambda x, y: (x, paper.height - y)


def _front(paper: Paper, words: CalibrationWords, combs: Sequence[Item]) -> Sheet:
    width, height = paper.width, paper.height
    right = width - (_COMB_Y + _BESIDE if combs else _RULE_Y + 1.5 * _BESIDE)
    box = (_LEFT, _TOP, right, height - _COMB_X - _BESIDE)
    items = (
        *edge_scale(height / 2, "front_x"),
        *edge_scale(width / 2, "front_y", upright=True),
        *long_rule((width - RULE) / 2, _RULE_X, "rule_x"),
        *long_rule((height - RULE) / 2, width - _RULE_Y, "rule_y", upright=True),
        *combs,
        *_words(paper, words.front_title, words.front, box),
    )
    return _sheet(paper, "front", items)


def _back(paper: Paper, words: CalibrationWords, through: Through) -> Sheet:
    width, height = paper.width, paper.height
    comb_y, comb_x = through(width - _COMB_Y, height - _COMB_X)
    left, right = _LEFT, comb_y - 1.5 * _BESIDE
    if comb_y < width / 2:
        left, right = comb_y + _BESIDE, width - MARK
    box = (left, _TOP, right, height - _COMB_X - _BESIDE)
    items = (
        *edge_scale(height / 2, "back_x"),
        *edge_scale(width / 2, "back_y", upright=True),
        *comb(width / 2, comb_x),
        *comb(height / 2, comb_y, upright=True),
        *_words(paper, words.back_title, words.back, box),
    )
    return _sheet(paper, "back", items)


def _combs_in_front(paper: Paper, said: str, through: Through) -> tuple[Item, ...]:
    """Return the front's lines of both combs, at their places on the front, and words below."""
    x, y = through(paper.width - _COMB_Y, paper.height - _COMB_X)
    steps = (
        *counter_comb(paper.width / 2, y),
        *counter_comb(paper.height / 2, x, upright=True),
    )
    note = set_line(said, OURS.medium, FLOOR)
    below = paper.height - _COMB_X + _BESIDE
    return Path(mapped(steps, through), line=PEN), *note.at(paper.width / 2, below, "centre")


def _sheet(paper: Paper, side: SheetSide, items: Sequence[Item]) -> Sheet:
    crosses = (cross(x, y) for x in (MARK, paper.width - MARK) for y in (MARK, paper.height - MARK))
    face = Face(f"{paper.name}, {side}", paper.width, paper.height, (*items, *crosses))
    return Sheet(paper.width, paper.height, (Placed(face, 0, 0),), side=side)


def _words(paper: Paper, title: str, paragraphs: Sequence[str], box: Box) -> tuple[Item, ...]:
    """Return the title and numbered paragraphs in the largest type in which the box holds them."""
    left, top, right, bottom = box
    for size in SIZES:
        items, end = _set(title, paragraphs, size, left, top, right - left)
        if end <= bottom:
            return items
    raise TooSmallToMeasure(paper)


def _set(
    title: str, paragraphs: Sequence[str], size: float, x: float, y: float, width: float
) -> tuple[tuple[Item, ...], float]:
    items: list[Item] = []
    told: list[tuple[str, Chain, float]] = [(title, OURS.bold, TITLE)]
    told += [(f"{number}. {text}", OURS.medium, size) for number, text in enumerate(paragraphs, 1)]
    for text, fonts, points in told:
        for line in break_lines(text, fonts, points, width):
            items += line.at(x, y + CAP_HEIGHT * points)
            y += LEADING * points
        y += BETWEEN * size
    return tuple(items), y
