"""What kind of line a piece is cut from or a spool holds: a piece or a spool in, its kind out."""

from fractions import Fraction
from typing import NamedTuple

from tagend.cards.practice.printed_sizes import alike
from tagend.cards.practice.rack_file import Spool
from tagend.cards.recipe.recipe import Section


class Line(NamedTuple):
    """What tells one kind of line from another at the bench."""

    material: str
    diameter_mm: Fraction

    @classmethod
    def of(cls, strand: Section | Spool) -> "Line":
        """Return the kind of line that a section is made of, or that a spool holds."""
        return cls(strand.material, strand.diameter.mm)

    def is_like(self, other: "Line") -> bool:
        """Whether one spool may be of either, printed in inches or in millimetres."""
        return alike(self.diameter_mm, other.diameter_mm) and self.material == other.material

    def is_of(self, spool: Spool) -> bool:
        """Whether a spool may hold this line."""
        return self.is_like(Line.of(spool))
