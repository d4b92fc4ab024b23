"""Labels along a line: texts and what each labels in; the most that fit, each at a place, out."""

from collections.abc import Sequence
from typing import NamedTuple

from tagend.cards.faces.label_spacing import spread
from tagend.layouts.paper.text import SetLine

_GAP = 0.7  # between two labels, in type sizes
_MOVED = 0.2  # of its width, and in type sizes; one moved further than both wants a line


class Label(NamedTuple):
    """A text, the place that it wants its middle at, and how much it matters."""

    line: SetLine
    anchor: float
    weight: float


class Placed(NamedTuple):
    """A label and where its middle came to stand."""

    line: SetLine
    anchor: float
    x: float
    moved: bool


def placed(labels: Sequence[Label], width: float) -> list[Placed]:
    """Return the labels within 0..width, none on another; where not all fit, the lightest go."""
    heaviest_first = sorted(range(len(labels)), key=lambda place: -labels[place].weight)
    for count in range(len(labels), 0, -1):
        kept = [labels[place] for place in sorted(heaviest_first[:count])]
        found = _spread(kept, width)
        if found is not None:
            return found
    return []


def _spread(labels: Sequence[Label], width: float) -> list[Placed] | None:
    gap = _GAP * labels[0].line.size
    wishes = [_inside(label, width) for label in labels]
    padded = [label.line.width + gap for label in labels]
    found = spread([wish + gap / 2 for wish in wishes], padded, width + gap)
    if found is None:
        return None
    middles = [middle - gap / 2 for middle in found]
    return [
        Placed(
            label.line,
            label.anchor,
            x,
            abs(x - wish) > _MOVED * max(label.line.width, label.line.size),
        )
        for label, x, wish in zip(labels, middles, wishes, strict=True)
    ]


def _inside(label: Label, width: float) -> float:
    """Return the middle of a label at its anchor, or as near as the width lets it."""
    half = label.line.width / 2
    return min(max(label.anchor, half), width - half)
