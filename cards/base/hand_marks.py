"""The marks that hands cut to without looking twice: exact lengths in, the same on marks out.

Above a foot (30 cm) whole inches or centimetres, below it halves of them: common practice, no
source.
"""

from collections.abc import Mapping, Sequence

from cfractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.layouts.base.quantities import INCH_MM

# The metric foot is 30 cm.
FOOT_MM: Mapping[ShownUnit, Fraction] = {
    "in": 12 * INCH_MM,
    "cm": Fraction(300),
    "mm": Fraction(300),
}
WHOLE_MM: Mapping[ShownUnit, Fraction] = {"in": INCH_MM, "cm": Fraction(10), "mm": Fraction(10)}


def hand_mark_mm(mm: Fraction, unit: ShownUnit) -> Fraction:
    """Return the distance of the marks that a length of this size is measured by."""
    whole = WHOLE_MM[unit]
    return whole if mm > FOOT_MM[unit] else whole / 2


def on_hand_marks(lengths: Sequence[Fraction], unit: ShownUnit) -> list[Fraction]:
    """Return lengths (mm) on marks that make exactly the same sum.

    What rounding down leaves over goes mark by mark to those that it took most from, and less than
    a mark to the longest, which alone may lie beside one.
    """
    marks = [hand_mark_mm(mm, unit) for mm in lengths]
    on_marks = [mm // mark * mark for mm, mark in zip(lengths, marks, strict=True)]
    lost = [mm - new for mm, new in zip(lengths, on_marks, strict=True)]
    left = sum(lengths) - sum(on_marks)
    for place in sorted(range(len(lengths)), key=lambda place: -lost[place]):
        if lost[place] and marks[place] <= left:
            on_marks[place] += marks[place]
            left -= marks[place]
    longest = max(range(len(lengths)), key=lambda place: lengths[place])
    on_marks[longest] += left
    return on_marks
