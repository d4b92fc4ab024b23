"""Sheets in, sheets out with helps in their free margins: a rule, and crosses on both sides.

What is kept clear besides the faces and marks of a sheet, such as labels for another day, is
given as boxes. Where there is no room, nothing is added.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import MM, Box, Face, Path, segment
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.rulers import TrueSizeRules
from tagend.layouts.sheets.cutouts import turning_axis
from tagend.layouts.sheets.ink import around, ink
from tagend.layouts.sheets.marks import EDGE, PEN
from tagend.layouts.sheets.sheet import Placed, Sheet

CLEAR = 2.5 * MM  # between a help and whatever stands next to it
CROSS, RING = 6 * MM, 1.5 * MM  # the length of a cross's lines, the radius of the ring around it


class _Margin(Struct, frozen=True):
    """A margin of a sheet, from where to where along and across; an upright one runs down."""

    upright: bool
    along: tuple[float, float]
    across: tuple[float, float]
    edge_is_last: bool  # across, the sheet's edge comes after what is printed

    def spot(self, length: float, depth: float, taken: Sequence[Box]) -> tuple[float, float] | None:
        """Return where a thing finds place, best at the sheet's edge and near the middle."""
        low, high = self.across
        if not fits(depth, high - low):
            return None
        for across in sorted((low, high - depth), reverse=self.edge_is_last):
            along = self._along(length, across, across + depth, taken)
            if along is not None:
                return (across, along) if self.upright else (along, across)
        return None

    def _along(self, length: float, low: float, high: float, taken: Sequence[Box]) -> float | None:
        turned = ((b[1], b[0], b[3], b[2]) if self.upright else b for b in taken)
        beside = sorted(b for b in turned if b[1] < high + CLEAR and b[3] > low - CLEAR)
        start, end = self.along
        middle = (start + end - length) / 2
        found = []
        for box in (*beside, (end + CLEAR, low, end + CLEAR, high)):
            if fits(length, box[0] - CLEAR - start):
                found.append(min(max(middle, start), box[0] - CLEAR - length))
            start = max(start, box[2] + CLEAR)
        return min(found, key=lambda place: abs(place - middle), default=None)


def with_rules(
    sheets: Sequence[Sheet], rules: TrueSizeRules, kept: Sequence[Box] = ()
) -> tuple[Sheet, ...]:
    """Return the sheets with a rule of true size on every front that has room in a margin."""
    places: dict[object, tuple[Placed, ...]] = {}  # sheets of a run are mostly laid out alike
    ruled = []
    for sheet in sheets:
        layout = (*_boxes(sheet), sheet.marks)
        if sheet.side == "front" and layout not in places:
            places[layout] = tuple(islice(_places(sheet, rules, kept), 1))
        ruled.append(replace(sheet, placed=(*sheet.placed, *places.get(layout, ()))))
    return tuple(ruled)


def registered(
    sheets: Sequence[Sheet], edge: Literal["long-edge", "short-edge"]
) -> tuple[Sheet, ...]:
    """Return sheets with crosses that meet when front and back do, held against the light.

    The sheets are fronts, each followed by its back, or fronts alone, which stay as they are.
    """
    if not any(sheet.side == "back" for sheet in sheets):
        return tuple(sheets)
    pairs = zip(sheets[::2], sheets[1::2], strict=True)
    return tuple(sheet for front, back in pairs for sheet in _crossed(front, back, edge))


def cross(x: float, y: float) -> Path:
    """Return a cross around a place, its arms upright and level."""
    arm = CROSS / 2
    return Path((*segment(x - arm, y, x + arm, y), *segment(x, y - arm, x, y + arm)), line=PEN)


def _margins(sheet: Sheet, kept: Sequence[Box]) -> Iterator[_Margin]:
    """Yield the margins below, above, left and right of all that is kept or placed."""
    body = around((*kept, *_boxes(sheet)))
    if body is None:
        return
    left, top, right, bottom = body
    level, upright = (EDGE, sheet.width - EDGE), (EDGE, sheet.height - EDGE)
    yield _Margin(False, level, (bottom + CLEAR, sheet.height - EDGE), edge_is_last=True)
    yield _Margin(False, level, (EDGE, top - CLEAR), edge_is_last=False)
    yield _Margin(True, upright, (EDGE, left - CLEAR), edge_is_last=False)
    yield _Margin(True, upright, (right + CLEAR, sheet.width - EDGE), edge_is_last=True)


def _places(sheet: Sheet, rules: Iterable[Face], kept: Sequence[Box]) -> Iterator[Placed]:
    """Yield the places for one of the rules, those for the first before all others."""
    taken = _taken(sheet, kept)
    for face in rules:
        for margin in _margins(sheet, kept):
            spot = margin.spot(face.width, face.height, taken)
            if spot is not None:
                yield Placed(face, *spot, 90 if margin.upright else 0)


def _boxes(sheet: Sheet) -> Iterator[Box]:
    return (placed.box for placed in sheet.placed)


def _taken(sheet: Sheet, kept: Sequence[Box]) -> list[Box]:
    marks = (ink((mark,)) for mark in sheet.marks)
    return [*kept, *_boxes(sheet), *(box for box in marks if box is not None)]


def _crossed(
    front: Sheet, back: Sheet, edge: Literal["long-edge", "short-edge"]
) -> tuple[Sheet, Sheet]:
    taken = _taken(front, ())
    spots = [margin.spot(CROSS, CROSS, taken) for margin in _margins(front, ())]
    for pair in (spots[2:], spots[:2]):  # left and right, else above and below
        places = [(spot[0] + CROSS / 2, spot[1] + CROSS / 2) for spot in pair if spot is not None]
        if len(places) == 2:  # two, at opposite edges, also tell a turn from a shift
            break
    else:
        return front, back
    upright = turning_axis(front.width, front.height, edge) == "upright"
    behind = [(front.width - x, y) if upright else (x, front.height - y) for x, y in places]
    rings = (Path(circle(x, y, RING), line=PEN) for x, y in places)
    return (
        replace(front, marks=(*front.marks, *rings, *(cross(x, y) for x, y in places))),
        replace(back, marks=(*back.marks, *(cross(x, y) for x, y in behind))),
    )
