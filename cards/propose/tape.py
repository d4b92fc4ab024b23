"""The marks that lengths are written in: the length to share in, whole marks and spellings out."""

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.hand_marks import FOOT_MM, WHOLE_MM
from tagend.cards.base.shown_lengths import FINEST_MM, ShownUnit, length
from tagend.cards.base.units import Length
from tagend.cards.practice.practice import Practice
from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import INCH_MM

# Shorter pieces are not seen in published tapers (the least is 9 in), and hands need room.
_SHORTEST_MM: dict[ShownUnit, Fraction] = {"in": 6 * INCH_MM, "cm": Fraction(150)}


class Tape(Struct, frozen=True, kw_only=True):
    """What is shared among the pieces of a leader, in whole inches or centimetres."""

    unit: ShownUnit
    mark_mm: Fraction
    total: int  # marks
    rest_mm: Fraction  # less than a mark; the first piece that is cut has it
    cut_mm: Fraction  # what cuts are rounded up to

    @property
    def shortest(self) -> int:
        """The shortest piece, in marks."""
        return int(_SHORTEST_MM[self.unit] / self.mark_mm)

    @property
    def foot(self) -> int:
        """The longest piece that is cut to halves of a mark too, in marks."""
        return int(FOOT_MM[self.unit] / self.mark_mm)

    def spelled(self, marks: int | Fraction, more_mm: Fraction = Fraction(0)) -> str:
        """Return a length as a recipe says it."""
        return length(marks * self.mark_mm + more_mm, self.unit)

    def room(self, left_mm: Fraction | None, knots_mm: Fraction) -> int:
        """Return the longest finished piece that a strand gives beside its knots, in marks."""
        if left_mm is None:
            return self.total
        cut = left_mm // self.cut_mm * self.cut_mm
        return min(self.total, int((cut - knots_mm) // self.mark_mm))


def tape_for(total: Length, fixed_mm: Fraction, practice: Practice) -> Tape:
    """Return the tape for what is left of a leader beside pieces whose length is asked for.

    Raises `Refused` for a total that no tape shows, and where nothing is left.
    """
    unit: ShownUnit = "in" if total.in_inches else "cm"
    if total.mm % FINEST_MM[unit]:
        raise refused(
            f"no tape shows {total.plain}", f"write a total such as {length(total.mm, unit)}"
        )
    free_mm, mark_mm = total.mm - fixed_mm, WHOLE_MM[unit]
    if free_mm < _SHORTEST_MM[unit]:
        raise refused(
            f"the pieces whose lengths you ask for leave {length(max(free_mm, Fraction(0)), unit)} "
            f"of {total.plain}",
            "write a longer total, or shorter pieces",
        )
    return Tape(
        unit=unit,
        mark_mm=mark_mm,
        total=int(free_mm // mark_mm),
        rest_mm=free_mm % mark_mm,
        cut_mm=practice.tape_mm(practice.unit or unit),
    )
