"""Lines that help to cut, fold, round and register: cutouts at places in, paths out."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain, groupby, pairwise
from typing import TypeAlias

from tagend.layouts.paper.curves import Steps, corner_arcs
from tagend.layouts.paper.face import MM, Path, segment
from tagend.layouts.paper.lengths import SLACK
from tagend.layouts.sheets.cutouts import Axis
from tagend.layouts.sheets.shelves import Slot

# Common practice in print: hairlines of 5 mm, 3 mm off the trim, 5 mm off the sheet's edge.
PEN = 0.25
LENGTH, GAP, EDGE = 5 * MM, 3 * MM, 5 * MM
SHORTEST, LEAST_GAP = 2 * MM, 1 * MM  # what they shrink to where there is little room
INNER_END = 2.5 * MM  # off the trim, between two rows: keeps the marks of both apart in 6 mm
FOLD_DASH = (1.5, 1.5)

Span: TypeAlias = tuple[float, float]
Slots: TypeAlias = Sequence[Slot]


def sheet_marks(slots: Slots, width: float, height: float) -> tuple[Path, ...]:
    """Return the cut marks, and dashed the fold marks, of a sheet's rows from the top down.

    They stand in the sheet's margin; between two rows only where these are cut differently.
    """
    return (
        *(Path(steps, line=PEN) for steps in _marks(_cuts, slots, width, height)),
        *(Path(steps, line=PEN, dash=FOLD_DASH) for steps in _marks(_folds, slots, width, height)),
    )


def corner_guides(slot: Slot, radius: float) -> Path:
    """Return the four arcs along which the corners of a cutout are rounded."""
    box = (slot.x, slot.y, slot.cutout.width, slot.cutout.height)
    return Path(corner_arcs(*box, radius), line=PEN)


def _cuts(slots: Slots, axis: Axis) -> Iterator[float]:
    return chain.from_iterable(_span(slot, axis) for slot in slots)


def _folds(slots: Slots, axis: Axis) -> Iterator[float]:
    return (sum(_span(slot, axis)) / 2 for slot in slots if slot.cutout.fold == axis)


def _span(slot: Slot, axis: Axis) -> Span:
    """Return where a cutout begins and ends, across the lines of an axis."""
    return (slot.x, slot.right) if axis == "upright" else (slot.y, slot.bottom)


def _marks(
    places: Callable[[Slots, Axis], Iterable[float]], slots: Slots, width: float, height: float
) -> Iterator[Steps]:
    left, right = min(slot.x for slot in slots), max(slot.right for slot in slots)
    for y in _distinct(places(slots, "level")):
        for start, end in (*_before(left), *_after(right, width)):
            yield segment(start, y, end, y)
    rows = [tuple(row) for _, row in groupby(slots, key=lambda slot: slot.y)]
    for run in _runs(rows):
        top, bottom = run[0].y, run[-1].bottom
        above = [(top - INNER_END, top - LEAST_GAP)] if run[0] is not slots[0] else _before(top)
        below = [(bottom + LEAST_GAP, bottom + INNER_END)]
        if run[-1] is slots[-1]:
            below = _after(bottom, height)
        for x in _distinct(places(run, "upright")):
            for start, end in (*above, *below):
                yield segment(x, start, x, end)


def _runs(rows: Sequence[Slots]) -> list[list[Slot]]:
    """Return neighbours that one set of upright cuts takes apart, together."""
    runs = [[*rows[0]]]
    for above, row in pairwise(rows):
        if all(_cut_alike(a, b) for a, b in zip(above, row, strict=False)):
            runs[-1] += row
        else:
            runs.append([*row])
    return runs


def _cut_alike(a: Slot, b: Slot) -> bool:
    return (a.x, a.right, a.cutout.fold) == (b.x, b.right, b.cutout.fold)


def _before(live: float) -> list[Span]:
    """Return from where to where a mark goes in the margin that ends where the pieces begin."""
    gap = min(GAP, max(LEAST_GAP, live - EDGE - SHORTEST))
    end = live - gap
    start = max(end - LENGTH, min(EDGE, end - SHORTEST), 0)
    return [(start, end)] if start < end else []


def _after(live: float, size: float) -> list[Span]:
    return [(size - end, size - start) for start, end in _before(size - live)]


def _distinct(places: Iterable[float]) -> list[float]:
    """Return places in order, without those a rounded sum away from the one before."""
    found: list[float] = []
    for place in sorted(places):
        if not found or place - found[-1] > SLACK:
            found.append(place)
    return found
