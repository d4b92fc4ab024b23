"""Lengths as people write them, such as `2 5/8 x 1 in`, in points; and points back as words."""

import re
from fractions import Fraction

from tagend.layouts.paper.face import MM, POINTS_PER_INCH

POINTS = {"mm": MM, "cm": 10 * MM, "in": POINTS_PER_INCH}
SLACK = 0.01 * MM  # covers rounded sums; far below what any cutter or printer can hold

_FINEST = 64  # the finest division of a common ruler

# Six digits hold a hundredth of a millimetre on any sheet.
_DIGITS = "[0-9]{1,6}"
_FRACTION = f"{_DIGITS}/[1-9][0-9]{{0,2}}"
_NUMBER = rf"({_DIGITS}[ -]{_FRACTION}|{_FRACTION}|{_DIGITS}(?:\.{_DIGITS})?|\.{_DIGITS})"
_LENGTH = re.compile(rf"{_NUMBER} ?(mm|cm|in)")
_PAIR = re.compile(rf"{_NUMBER} ?(mm|cm|in)? ?[x×] ?{_NUMBER} ?(mm|cm|in)")


def fits(size: float, room: float) -> bool:
    """Say whether `size` finds place in `room`, both in points."""
    return size <= room + SLACK


def parse_length(text: str) -> float:
    """Return the points of a length such as `3/16 in`; raises ValueError when it is none."""
    match = _LENGTH.fullmatch(_plain(text))
    if match is None:
        raise ValueError(f"{text!r} is no length")
    return _points(match[1], match[2])


def parse_pair(text: str) -> tuple[float, float]:
    """Return the points across and down of a pair such as `85.6 x 54 mm` or `3x5in`.

    Raises ValueError when it is none; a number without a unit is of the last one's.
    """
    match = _PAIR.fullmatch(_plain(text))
    if match is None:
        raise ValueError(f"{text!r} is no pair of lengths")
    return _points(match[1], match[2] or match[4]), _points(match[3], match[4])


def in_mm(points: float) -> str:
    """Return a length as words, to the hundredth: `66.67 mm`."""
    return f"{_number(points)} mm"


def size_in_mm(width: float, height: float) -> str:
    """Return a size as words, to the hundredth: `85.6 × 53.98 mm`."""
    return f"{_number(width)} × {_number(height)} mm"


def in_inches(points: float) -> str:
    """Return a length as a ruler shows it, `2 5/8 in`, else to the thousandth: `0.079 in`."""
    inches = points / POINTS_PER_INCH
    nearest = Fraction(round(inches * _FINEST), _FINEST)
    if abs(float(nearest) - inches) * POINTS_PER_INCH > SLACK:
        return f"{inches:.3f}".rstrip("0").rstrip(".") + " in"
    whole, rest = divmod(nearest, 1)
    return f"{whole} {rest} in" if whole and rest else f"{whole or rest} in"


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _points(number: str, unit: str) -> float:
    exact = sum(Fraction(part) for part in re.split("[ -]", number))
    return float(exact) * POINTS[unit]


def _number(points: float) -> str:
    return f"{points / MM:.2f}".rstrip("0").rstrip(".")
