"""The scales of a page that measures a printer: places in, lines and figures out.

Each comes level or upright; an upright one has x and y changed over, and its words beside it.
"""

from collections.abc import Iterable

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Item, Path, Step, mapped, segment
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.rulers import PEN, ticks_along
from tagend.layouts.paper.text import CAP_HEIGHT, set_line
from tagend.layouts.sheets.printer import MARK, RULE

REACH = 5 * MM  # of an edge scale to either side of its zero
STEP = 0.2 * MM  # by which the two lines of a comb's pair lie farther apart than those before
PITCH = 2.5 * MM  # between a comb's own lines
PAIRS = range(-15, 16)
TOOTH = 4 * MM

_BOLD = 0.6  # points; the lines that are measured from and to


def edge_scale(y: float, name: str, *, upright: bool = False) -> tuple[Item, ...]:
    """Return the scale to be read where a ruler says 20 mm, its 0 at the sheet's left edge.

    A print that lies too far from the edge has its zero beyond that place, which then is on the
    side towards the edge: there the figures are above 0.
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


def comb(middle: float, y: float, *, upright: bool = False) -> tuple[Item, ...]:
    """Return the lines and figures of the side on which a comb is read."""
    teeth = [segment(middle + PITCH * k, y, middle + PITCH * k, y - TOOTH) for k in PAIRS]
    figures = (
        item
        for k in PAIRS
        if k % 5 == 0
        for item in _above(_signed(k), middle + PITCH * k, y - TOOTH - 1 * MM, upright)
    )
    return (_path(_flat(teeth), PEN, upright), *figures)


def counter_comb(middle: float, y: float, *, upright: bool = False) -> tuple[Step, ...]:
    """Return the lines of the other side, where they lie when seen through the sheet.

    One pair of lines meets where the side that is read is off by what its figure says.
    """
    apart = PITCH + STEP
    teeth = (segment(middle + apart * k, y, middle + apart * k, y + TOOTH) for k in PAIRS)
    return _turned(_flat(teeth), upright)


def _signed(k: int) -> str:
    return f"{round(k * STEP / MM):+d}".replace("-", "−").replace("+0", "0")


def _flat(segments: Iterable[tuple[Step, ...]]) -> tuple[Step, ...]:
    return tuple(step for each in segments for step in each)


def _path(steps: tuple[Step, ...], line: float, upright: bool) -> Path:
    return Path(_turned(steps, upright), line=line)


def _turned(steps: Iterable[Step], upright: bool) -> tuple[Step, ...]:
    return mapped(steps, lambda x, y: (y, x)) if upright else tuple(steps)


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
