"""The marks that lengths are written in: a leader's length in, whole marks and spellings out."""

from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit, length
from tagend.cards.base.units import Length
from tagend.cards.practice.practice import Practice
from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import INCH_MM

_MARKS_MM: dict[ShownUnit, tuple[Fraction, ...]] = {
    "in": tuple(INCH_MM / part for part in (1, 2, 4, 8, 16)),
    "cm": (Fraction(10), Fraction(5), Fraction(1)),
}
# Shorter pieces are not seen in published tapers (the least is 9 in), and hands need room.
_SHORTEST_MM: dict[ShownUnit, Fraction] = {"in": 6 * INCH_MM, "cm": Fraction(150)}


@dataclass(frozen=True, slots=True)
class Tape:
    """A leader's length in the coarsest marks that make it up."""

    unit: ShownUnit
    mark_mm: Fraction
    total: int  # marks
    cut_mm: Fraction  # what cuts are rounded up to

    @property
    def shortest(self) -> int:
        """The shortest piece, in marks."""
        return int(-(-_SHORTEST_MM[self.unit] // self.mark_mm))

    def spelled(self, marks: int) -> str:
        """Return a length as a recipe says it."""
        return length(marks * self.mark_mm, self.unit)

    def room(self, left_mm: Fraction | None, knots_mm: Fraction) -> int:
        """Return the longest finished piece that a strand gives beside its knots, in marks."""
        if left_mm is None:
            return self.total
        cut = left_mm // self.cut_mm * self.cut_mm
        return min(self.total, int((cut - knots_mm) // self.mark_mm))


def tape_for(total: Length, practice: Practice) -> Tape:
    """Return the tape that a leader is measured with; raises `Refused` for no length of a tape."""
    unit: ShownUnit = "in" if total.in_inches else "cm"
    for mark in _MARKS_MM[unit]:
        if total.mm % mark == 0:
            cut_mm = practice.tape_mm(practice.unit or unit)
            return Tape(unit=unit, mark_mm=mark, total=int(total.mm / mark), cut_mm=cut_mm)
    raise refused(
        f"no tape shows {total.plain}",
        f"write a total such as {length(total.mm, unit)}",
    )
