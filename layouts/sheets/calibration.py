"""A paper in; the pages by which a person measures a printer with a ruler out."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from tagend.fonts import OURS, Chain
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.paper.face import MM, Face, Item, Path, Step, mapped, segment
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.paper.rulers import PEN, ticks_along
from tagend.layouts.paper.text import CAP_HEIGHT, break_lines, set_below, set_line
from tagend.layouts.sheets.margins import cross
from tagend.layouts.sheets.printer import MARK, RULE
from tagend.layouts.sheets.sheet import Placed, Sheet, SheetSide
from tagend.layouts.stock.formats import Paper

REACH = 5 * MM  # of an edge scale to either side of its zero
LEAST = (139 * MM, 205 * MM)  # of a paper: room for the rules, and for words beside them
TITLE, LARGE, SMALL = 14.0, 10.0, 8.0  # points
LEADING = 1.25

_RULE_X, _RULE_Y = 44 * MM, 25 * MM  # from the top and from the right edge
_LEFT, _TOP, _RIGHT = 40 * MM, 60 * MM, 45 * MM  # of the words: past the scale and the rules
_BOLD = 0.6  # points; the lines that are measured from and to


class CalibrationWords(Struct, frozen=True):
    """What is said on the pages: a title and the steps of each side.

    The scales and rules bear the keys of a printer's measures, which no language changes.
    """

    front_title: str
    front: tuple[str, ...]
    back_title: str
    back: tuple[str, ...]


def calibration_sheets(
    paper: Paper, words: CalibrationWords, *, with_back: bool
) -> tuple[Sheet, ...]:
    """Return the front, and the back where one is wanted. Raises `Refused` for a small paper."""
    width, height = paper.width, paper.height
    if width < LEAST[0] or height < LEAST[1]:
        raise _too_small(paper)
    rules = (
        *long_rule((width - RULE) / 2, _RULE_X, "rule_x"),
        *long_rule((height - RULE) / 2, width - _RULE_Y, "rule_y", upright=True),
    )
    front = _sheet(paper, "front", (*rules, *_words(paper, words.front_title, words.front)))
    if not with_back:
        return (front,)
    return front, _sheet(paper, "back", _words(paper, words.back_title, words.back))


def _too_small(paper: Paper) -> Refused:
    size = size_in_mm(paper.width, paper.height)
    return refused(
        f"{paper.name}, {size}, is too small to measure a printer with",
        "use a larger one, such as A5 or Letter",
    )


def edge_scale(y: float, name: str, *, upright: bool = False) -> tuple[Item, ...]:
    """Return the scale to be read where a ruler says 20 mm, its 0 at the sheet's left edge.

    A print that lies too far from the edge has its zero beyond that place, which then is on the
    side towards the edge: there the figures are above 0. An upright scale has x and y changed
    over.
    """
    ticks = ticks_along(MARK - REACH, y, MM / 2, 20, {1: -1.5 * MM, 2: -2.5 * MM, 10: -4 * MM})
    line = segment(MARK - REACH, y, MARK + REACH, y)
    zero = segment(MARK, y + 2 * MM, MARK, y - 4 * MM)
    figures = ((MARK - REACH, "+5"), (MARK, "0"), (MARK + REACH, "−5"))
    return (
        _path((*line, *ticks), PEN, upright),
        _path(zero, _BOLD, upright),
        *(item for x, text in figures for item in _above(text, x, y - 5 * MM, upright)),
        *_after(name, MARK + REACH + 3 * MM, y, upright),
    )


def long_rule(start: float, y: float, name: str, *, upright: bool = False) -> tuple[Item, ...]:
    """Return 100 mm to be measured between its two bold ends."""
    line = segment(start, y, start + RULE, y)
    ticks = ticks_along(start, y, MM, 100, {1: 1.5 * MM, 5: 2.2 * MM, 10: 3.2 * MM})
    ends = [segment(x, y - 2 * MM, x, y + 5 * MM) for x in (start, start + RULE)]
    return (
        _path((*line, *ticks), PEN, upright),
        _path((*ends[0], *ends[1]), _BOLD, upright),
        *_above(name, start + RULE / 2, y - 1.5 * MM, upright),
    )


def _sheet(paper: Paper, side: SheetSide, items: Sequence[Item]) -> Sheet:
    """Return a side with its edge scales, and crosses that show whether it went in askew."""
    width, height = paper.width, paper.height
    scales = (
        *edge_scale(height / 2, f"{side}_x"),
        *edge_scale(width / 2, f"{side}_y", upright=True),
    )
    crosses = (cross(x, y) for x in (MARK, width - MARK) for y in (MARK, height - MARK))
    items = (*scales, *items, *crosses)
    face = Face(name=f"{paper.name}, {side}", width=width, height=height, items=items)
    return Sheet(width, height, (Placed(face, 0, 0),), side=side)


def _words(paper: Paper, title: str, paragraphs: Sequence[str]) -> tuple[Item, ...]:
    """Return the title and numbered paragraphs in the larger type that has room."""
    for size in (LARGE, SMALL):
        items, end = _set(title, paragraphs, size, paper.width - _LEFT - _RIGHT)
        if end <= paper.height - 2 * MARK:
            return tuple(items)
    raise _too_small(paper)


def _set(
    title: str, paragraphs: Sequence[str], size: float, width: float
) -> tuple[list[Item], float]:
    """Return words one below the other, and where they end."""
    items: list[Item] = []
    y = _TOP
    told: list[tuple[str, Chain, float]] = [(title, OURS.bold, TITLE)]
    told += [(f"{number}. {text}", OURS.medium, size) for number, text in enumerate(paragraphs, 1)]
    for text, fonts, points in told:
        runs, y = set_below(break_lines(text, fonts, points, width), _LEFT, y, LEADING)
        items += runs
        y += size / 2
    return items, y


def _path(steps: Iterable[Step], line: float, upright: bool) -> Path:
    return Path(mapped(steps, lambda x, y: (y, x) if upright else (x, y)), line=line)


def _above(text: str, along: float, base: float, upright: bool) -> tuple[Item, ...]:
    """Return words above a place of a level scale, or left of it on an upright one."""
    line = set_line(text, OURS.medium, FLOOR)
    if upright:
        return line.at(base, along + CAP_HEIGHT * FLOOR / 2, "right")
    return line.at(along, base, "centre")


def _after(text: str, along: float, base: float, upright: bool) -> tuple[Item, ...]:
    """Return bold words to the right of a level scale, or below an upright one."""
    line = set_line(text, OURS.bold, FLOOR)
    if upright:
        return line.at(base, along + CAP_HEIGHT * FLOOR, "centre")
    return line.at(along, base, "left")
