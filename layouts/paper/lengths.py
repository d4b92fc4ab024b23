"""Lengths as people write them, such as `2 5/8 x 1 in`, in points; and points back as words."""

import re

from cfractions import Fraction

from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import INCH_MM, mixed, plain, quoted, read_length, with_unit
from tagend.layouts.paper.face import MM, POINTS_PER_INCH

SLACK = 0.01 * MM  # covers rounded sums; far below what any cutter or printer can hold

_FINEST = 64  # the finest division of a common ruler
_HINT = 'write a length with its unit, such as "3/16 in" or "1.5 mm"'
_PAIR_HINT = 'write two lengths with their unit, such as "63.5 x 38.1 mm"'


def fits(size: float, room: float) -> bool:
    """Say whether `size` finds place in `room`, both in points."""
    return size <= room + SLACK


def parse_length(written: object) -> float:
    """Return the points of a length such as `3/16 in`; raises `Refused` when it is none."""
    return _points(written, _HINT)


def parse_pair(written: object) -> tuple[float, float]:
    """Return the points across and down of a pair such as `85.6 x 54 mm` or `3x5in`.

    Raises `Refused` when it is none; a number without a unit is of the last one's.
    """
    across, between, down = re.sub(" ?[x×] ?", "×", plain(written, _PAIR_HINT)).partition("×")
    if not between:
        raise refused(f"{quoted(written)} is no pair of lengths", _PAIR_HINT)
    unit = read_length(down, _PAIR_HINT).unit
    return _points(with_unit(across, unit), _PAIR_HINT), _points(down, _PAIR_HINT)


def parse_size(written: object) -> tuple[float, float]:
    """Return a pair of which both are above nought, as `parse_pair` does."""
    width, height = parse_pair(written)
    if not width or not height:
        raise refused(f"found {written!r}", "write lengths above 0")
    return width, height


def in_mm(points: float) -> str:
    """Return a length as words, to the hundredth: `66.67 mm`."""
    return f"{_decimal(points / MM, 2)} mm"


def size_in_mm(width: float, height: float) -> str:
    """Return a size as words, to the hundredth: `85.6 × 53.98 mm`."""
    return f"{_decimal(width / MM, 2)} × {in_mm(height)}"


def in_inches(points: float) -> str:
    """Return a length as a ruler shows it, `2 5/8 in`, else to the thousandth: `0.079 in`."""
    inches = points / POINTS_PER_INCH
    nearest = Fraction(round(inches * _FINEST), _FINEST)
    if abs(float(nearest) - inches) * POINTS_PER_INCH > SLACK:
        return f"{_decimal(inches, 3)} in"
    return f"{mixed(nearest)} in"


def _points(written: object, hint: str) -> float:
    return float(read_length(written, hint).amount / INCH_MM * Fraction(POINTS_PER_INCH))


def _decimal(number: float, places: int) -> str:
    return f"{number:.{places}f}".rstrip("0").rstrip(".")
