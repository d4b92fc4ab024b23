"""Lines that help to cut, fold, round and register: places in points in, paths out."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from tagend.layouts.paper.curves import Steps, corner_arcs
from tagend.layouts.paper.face import MM, Path, segment
from tagend.layouts.paper.lengths import SLACK
from tagend.layouts.sheets.cutouts import Axis

# Common practice in print: hairlines of 5 mm, 3 mm off the trim, 5 mm off the sheet's edge.
PEN = 0.25
LENGTH, GAP, EDGE = 5 * MM, 3 * MM, 5 * MM
SHORTEST, LEAST_GAP = 2 * MM, 1 * MM  # what they shrink to where there is little room
INNER_END = 2.5 * MM  # off the trim, between two rows: keeps the marks of both apart in 6 mm
FOLD_DASH = (1.5, 1.5)

Span = tuple[float, float]


class Strip(NamedTuple):
    """A piece in its row: where it begins and ends across the sheet, and how it is folded."""

    left: float
    right: float
    fold: Axis | None = None


class StripRow(NamedTuple):
    """Pieces of one height side by side, from left to right."""

    top: float
    bottom: float
    strips: tuple[Strip, ...]


def sheet_marks(rows: Sequence[StripRow], width: float, height: float) -> tuple[Path, ...]:
    """Return the cut marks, and dashed the fold marks, of a sheet's rows from the top down.

    They stand in the sheet's margin; between two rows only where these are cut differently.
    """
    cuts = (
        *_level_marks(_level_cuts(rows), rows, width),
        *_upright_marks(_upright_cuts, rows, height),
    )
    folds = (
        *_level_marks(_level_folds(rows), rows, width),
        *_upright_marks(_upright_folds, rows, height),
    )
    return (
        *(Path(steps, line=PEN) for steps in cuts),
        *(Path(steps, line=PEN, dash=FOLD_DASH) for steps in folds),
    )


def corner_guides(x: float, y: float, width: float, height: float, radius: float) -> Path:
    """Return the four arcs along which the corners of a box are rounded."""
    return Path(corner_arcs(x, y, width, height, radius), line=PEN)


def _level_cuts(rows: Sequence[StripRow]) -> list[float]:
    return _distinct(y for row in rows for y in (row.top, row.bottom))


def _level_folds(rows: Sequence[StripRow]) -> list[float]:
    folded = [row for row in rows if any(strip.fold == "level" for strip in row.strips)]
    return _distinct((row.top + row.bottom) / 2 for row in folded)


def _level_marks(ys: list[float], rows: Sequence[StripRow], width: float) -> Iterator[Steps]:
    left = min(row.strips[0].left for row in rows)
    right = max(row.strips[-1].right for row in rows)
    for y in ys:
        for start, end in (*_before(left), *_after(right, width)):
            yield segment(start, y, end, y)


def _upright_cuts(run: Sequence[StripRow]) -> list[float]:
    return _distinct(x for row in run for strip in row.strips for x in (strip.left, strip.right))


def _upright_folds(run: Sequence[StripRow]) -> list[float]:
    folded = [strip for row in run for strip in row.strips if strip.fold == "upright"]
    return _distinct((strip.left + strip.right) / 2 for strip in folded)


def _upright_marks(
    places: Callable[[Sequence[StripRow]], list[float]], rows: Sequence[StripRow], height: float
) -> Iterator[Steps]:
    for run in _runs(rows):
        top, bottom = run[0].top, run[-1].bottom
        above, below = (
            _before(top) if run[0] is rows[0] else [(top - INNER_END, top - LEAST_GAP)],
            _after(bottom, height)
            if run[-1] is rows[-1]
            else [(bottom + LEAST_GAP, bottom + INNER_END)],
        )
        for x in places(run):
            for start, end in (*above, *below):
                yield segment(x, start, x, end)


def _runs(rows: Sequence[StripRow]) -> list[list[StripRow]]:
    """Return neighbours that one set of upright cuts takes apart, together."""
    runs = [[rows[0]]]
    for above, row in pairwise(rows):
        if all(a == b for a, b in zip(above.strips, row.strips, strict=False)):
            runs[-1].append(row)
        else:
            runs.append([row])
    return runs


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
