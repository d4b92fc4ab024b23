"""The marks of a tape that hands use: a length and its unit in, the distance of its marks out."""

from collections.abc import Mapping
from fractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.layouts.base.quantities import INCH_MM

# Pieces of a foot or more are cut to whole inches or centimetres, shorter ones to halves of them:
# common practice, no source. The metric foot is 30 cm.
FOOT_MM: Mapping[ShownUnit, Fraction] = {
    "in": 12 * INCH_MM,
    "cm": Fraction(300),
    "mm": Fraction(300),
}
WHOLE_MM: Mapping[ShownUnit, Fraction] = {"in": INCH_MM, "cm": Fraction(10), "mm": Fraction(10)}


def mark_mm(mm: Fraction, unit: ShownUnit) -> Fraction:
    """Return how far apart the marks are that hands use at a length."""
    whole = WHOLE_MM[unit]
    return whole if mm > FOOT_MM[unit] else whole / 2


def to_hand_mark(mm: Fraction, unit: ShownUnit) -> Fraction:
    """Return the mark nearest to a length, of two equally near the longer."""
    mark = mark_mm(mm, unit)
    return (mm / mark + Fraction(1, 2)) // 1 * mark
