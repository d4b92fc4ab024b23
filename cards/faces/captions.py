"""Captions along a line: texts and what each stands by in; the most that fit, in place, out."""

from collections.abc import Sequence
from itertools import accumulate

from msgspec import Struct

from tagend.layouts.paper.text import SetLine

_GAP = 0.7  # between two captions, in type sizes
_MOVED = 0.2  # of its width, and in type sizes; one moved further than both wants a line


class Caption(Struct, frozen=True):
    """A text, the place that it wants its middle at, and how much it matters."""

    line: SetLine
    anchor: float
    weight: float


class PlacedCaption(Struct, frozen=True):
    """A caption and where its middle came to stand."""

    line: SetLine
    anchor: float
    x: float
    moved: bool


def placed_captions(captions: Sequence[Caption], width: float) -> list[PlacedCaption]:
    """Return the captions within 0..width, none on another; where not all fit, the lightest go."""
    heaviest_first = sorted(range(len(captions)), key=lambda place: -captions[place].weight)
    for count in range(len(captions), 0, -1):
        kept = [captions[place] for place in sorted(heaviest_first[:count])]
        gap = _GAP * kept[0].line.size
        wishes = [_inside(caption, width) for caption in kept]
        padded = [caption.line.width + gap for caption in kept]
        middles = without_overlap([wish + gap / 2 for wish in wishes], padded, width + gap)
        if middles is not None:
            places = zip(kept, wishes, middles, strict=True)
            return [_placed(each, wish, middle - gap / 2) for each, wish, middle in places]
    return []


def _placed(caption: Caption, wish: float, x: float) -> PlacedCaption:
    moved = abs(x - wish) > _MOVED * max(caption.line.width, caption.line.size)
    return PlacedCaption(line=caption.line, anchor=caption.anchor, x=x, moved=moved)


def _inside(caption: Caption, width: float) -> float:
    """Return the middle of a caption at its anchor, or as near as the width lets it."""
    half = caption.line.width / 2
    return min(max(caption.anchor, half), width - half)


def without_overlap(
    centres: Sequence[float], widths: Sequence[float], room: float
) -> list[float] | None:
    """Return the centres moved as little as can be so that nothing overlaps or leaves 0..room.

    Least squares under order constraints, by pooling adjacent violators (Barlow and others,
    Statistical Inference under Order Restrictions, 1972). None where they cannot fit at all.
    """
    if sum(widths) > room:
        return None
    before = list(accumulate(widths, initial=0.0))
    wishes = [c - w / 2 - b for c, w, b in zip(centres, widths, before, strict=False)]
    lefts = [min(max(wish, 0.0), room - before[-1]) for wish in _rising(wishes)]
    return [left + b + w / 2 for left, b, w in zip(lefts, before, widths, strict=False)]


def _rising(wishes: Sequence[float]) -> list[float]:
    """Return the nearest values that never fall."""
    pools: list[tuple[float, int]] = []  # sum and count; each pool takes its mean
    for wish in wishes:
        total, count = wish, 1
        while pools and pools[-1][0] / pools[-1][1] > total / count:
            before, members = pools.pop()
            total, count = total + before, count + members
        pools.append((total, count))
    return [total / count for total, count in pools for _ in range(count)]
