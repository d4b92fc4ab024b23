"""What kind of line a piece is cut from or a spool holds: a piece or a spool in, its kind out."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from cfractions import Fraction

from tagend.cards.practice.printed_sizes import PRINTED_MM, alike
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.recipe.recipe import Section


class Line(NamedTuple):
    """What tells one kind of line from another at the bench."""

    material: str
    diameter_mm: Fraction

    def __hash__(self) -> int:
        """Return that of a text and an integer: a fraction's takes twenty times as long."""
        return hash((self.material, self.diameter_mm.numerator))

    @classmethod
    def of(cls, strand: Section | Spool) -> "Line":
        """Return the kind of line that a section is made of, or that a spool holds."""
        return cls(strand.material, strand.diameter.mm)

    def spools(self, rack: Rack | None) -> tuple[Spool, ...]:
        """Return the spools of a rack that may hold this line."""
        return tuple(spool for spool in (rack.spools if rack else ()) if self.is_of(spool))

    def is_of(self, spool: Spool) -> bool:
        """Whether a spool may hold this line, printed in inches or in millimetres."""
        return spool.material == self.material and alike(spool.diameter.mm, self.diameter_mm)

    def among(self, kinds: "Sequence[Line]") -> range:
        """Return where, in a sorted list of kinds, those stand whose spools may hold this line."""
        thin, thick = (
            self._replace(diameter_mm=self.diameter_mm + by) for by in (-PRINTED_MM, PRINTED_MM)
        )
        return range(bisect_right(kinds, thin), bisect_left(kinds, thick))
