"""Lengths on the marks of a tape: lengths and the sum they shall make in, new lengths out."""

from collections.abc import Sequence
from fractions import Fraction


def scaled(lengths: Sequence[Fraction], total: Fraction, mark: Fraction) -> list[Fraction]:
    """Return the lengths in their proportion; their sum is the mark nearest to `total`.

    What rounding down to the marks leaves over goes to those that it took most from.
    """
    factor = total / sum(lengths) / mark
    exact = [length * factor for length in lengths]
    marks = [number // 1 for number in exact]
    left = round(total / mark) - sum(marks)
    most_lost = sorted(range(len(exact)), key=lambda place: marks[place] - exact[place])
    for place in most_lost[:left]:
        marks[place] += 1
    return [number * mark for number in marks]


def levelled(lengths: Sequence[Fraction], total: Fraction, mark: Fraction) -> list[Fraction]:
    """Return the lengths with the longest cut down to one length, so that they make `total`.

    `total` is no more than they make now. The short ones, which have the least room for their
    knots, stay as they are.
    """
    level = _level(lengths, total)
    long = [place for place, length in enumerate(lengths) if length > level]
    rest = sum(length for length in lengths if length <= level)
    cut = scaled([Fraction(1)] * len(long), total - rest, mark) if long else []
    new = dict(zip(long, cut, strict=True))
    return [new.get(place, length) for place, length in enumerate(lengths)]


def _level(lengths: Sequence[Fraction], total: Fraction) -> Fraction:
    """Return the length to which all longer ones come down."""
    left, count = total, len(lengths)
    for length in sorted(lengths):
        if length * count >= left:
            break
        left, count = left - length, count - 1
    return left / count
