"""A label sheet in; the dimension lines that say all its measures, none on another's figure, out."""

from collections.abc import Iterable, Iterator
from itertools import product

from layouts.dimensions import ARROW, Dimension, across, down, figure_size
from layouts.face import MM
from layouts.formats import LabelSheet
from layouts.lengths import SLACK
from layouts.marks import EDGE

FRACTIONS = (0.5, 0.3, 0.7, 0.15, 0.85)  # of a label: where a line may run through it
NEXT = 1 * MM  # from a label's edge to a figure beside it


def sheet_dimensions(stock: LabelSheet) -> tuple[Dimension, ...]:
    """Return the size of a label, the pitches, and the margins on all four sides."""
    chosen: list[Dimension] = []
    for ways in (_size(stock), _pitch(stock), _margins(stock)):
        for way in ways:
            candidates = list(way)
            clear = (each for each in candidates if each.is_clear_of(chosen))
            chosen += [next(clear, candidates[0])] if candidates else []
    return tuple(chosen)
