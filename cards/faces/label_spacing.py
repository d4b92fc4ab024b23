"""Labels along a line: where they want to be in, places that do not collide out."""

from collections.abc import Sequence
from itertools import accumulate


def spread(centres: Sequence[float], widths: Sequence[float], room: float) -> list[float] | None:
    """Return the centres moved as little as can be so that no label overlaps or leaves 0..room.

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
