"""A person's own lap from one knot tied: lengths before and after in, the sum out."""

from collections.abc import Iterable, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import FINEST_MM, ShownUnit, length
from tagend.cards.base.units import Length
from tagend.cards.leader.allowance import round_up
from tagend.cards.practice.knots import Knot, Knots
from tagend.layouts.base.faults import refused


class Learned(Struct, frozen=True):
    """What a knot took, hand length and trimmings and all."""

    knot: Knot
    before: tuple[Length, ...]
    after: Length
    taken_mm: Fraction  # by the whole knot

    @property
    def unit(self) -> ShownUnit:
        return "in" if self.after.in_inches else "mm"

    @property
    def lap(self) -> str:
        """The length to write into a shop file, rounded up to a fine mark of the tape."""
        return length(round_up(self.taken_mm, FINEST_MM[self.unit]), self.unit)

    @property
    def sum(self) -> str:
        """The arithmetic in one line."""
        before = " + ".join(piece.plain for piece in self.before)
        word = "the lap" if len(self.before) == 2 else "the fold"
        return f"{before} - {self.after.plain} = {self.lap}, {word}"


def written_key(knot: Knot, knots: Knots, keys: Iterable[str]) -> str:
    """Return the key that a shop file has the knot's lap under, or else the knot's name."""
    return next((key for key in keys if knots.find(key) is knot), knot.name)


def learn(knot: Knot, before: Sequence[Length], after: Length) -> Learned:
    """Return what a knot took of one or two pieces of known length.

    `after` is what is left: of two pieces from end to end, of one from its end to the knot.
    Raises `Refused` where the knot takes another number of pieces, has a fold on
    each side, or cannot have taken what the lengths say.
    """
    pieces = 2 if "joint" in knot.places else 1
    if len(before) != pieces:
        raise refused(
            f"{knot.name!r} is tied with {counted(pieces, 'piece')} of line",
            f"give {'both lengths' if pieces > 1 else 'its length'} with --from",
        )
    if pieces == 2 and not knot.lapped:
        raise refused(
            f"{knot.name!r} has a fold on each side",
            "mark both strands, and write { above = ..., below = ... } under [lap] there",
        )
    taken = sum((piece.mm for piece in before), start=Fraction(0)) - after.mm
    if taken <= 0:
        raise refused("the line is no shorter than before", "measure it again after tying")
    return Learned(knot, tuple(before), after, taken)
