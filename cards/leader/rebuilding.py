"""A used leader rebuilt: a leader and what is left of its sections in; what to cut anew, out."""

from collections.abc import Iterator, Mapping

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import FINEST_MM, length
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.renewal import retied_mm, worn_mm
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules_of_thumb import rules_of_thumb
from tagend.layouts.base.faults import Fault, refuse_any


class Mended(Struct, frozen=True, kw_only=True):
    """One section of a used leader, and what becomes of it."""

    piece: Piece
    left_mm: Fraction  # finished, before anything is tied
    taken_mm: Fraction  # of it, by the knots that are tied anew at its ends
    stays: bool

    @property
    def finished_mm(self) -> Fraction:
        """Its finished length in the rebuilt leader."""
        return self.left_mm - self.taken_mm if self.stays else self.piece.finished.low_mm

    @property
    def short_mm(self) -> Fraction:
        """What it lacks of its recipe."""
        return max(self.piece.finished.low_mm - self.finished_mm, Fraction(0))


class Rebuilt(Struct, frozen=True):
    """A used leader with every spent section cut anew, from the butt to the fly."""

    sections: tuple[Mended, ...]

    @property
    def finished_mm(self) -> Fraction:
        return sum((each.finished_mm for each in self.sections), start=Fraction(0))

    @property
    def staying_mm(self) -> Fraction:
        """How much of the rebuilt leader is old."""
        return sum((each.finished_mm for each in self.sections if each.stays), start=Fraction(0))

    @property
    def short_mm(self) -> Fraction:
        """What it lacks of its recipe in all."""
        return sum((each.short_mm for each in self.sections), start=Fraction(0))

    @property
    def worth_it(self) -> bool:
        """Whether it is no better to start anew: enough stays, by our rule of thumb.

        What is bought ready made is no work to keep, and worth more than line.
        """
        enough = self.staying_mm >= rules_of_thumb().staying_share * self.finished_mm
        return enough or any(each.stays and each.piece.bought for each in self.sections)


def rebuilt(leader: Leader, told: Mapping[int, Fraction], practice: Practice) -> Rebuilt:
    """Return a used leader rebuilt to its recipe; `told` is what is left of sections, in mm.

    A section that is not told of is whole, but what hangs below a lost one is lost with it. New
    knots take of what stays, so that a neighbour may be spent by them. Raises `Refused` for a
    section that is not there and for more than its recipe has.
    """
    refuse_any(_impossible(leader, told))
    left = list(_left(leader, told))
    worn = [worn_mm(piece, leader, practice) for piece in leader.pieces]
    spent: set[int] = set()
    while True:
        taken = _taken(leader, spent)
        rests = zip(left, taken, worn, strict=True)
        now = {place for place, (mm, take, least) in enumerate(rests) if mm - take < least}
        if now <= spent:
            break
        spent |= now
    rows = enumerate(zip(leader.pieces, left, taken, strict=True))
    return Rebuilt(
        tuple(
            Mended(piece=piece, left_mm=mm, taken_mm=take, stays=place not in spent)
            for place, (piece, mm, take) in rows
        )
    )


def _left(leader: Leader, told: Mapping[int, Fraction]) -> Iterator[Fraction]:
    lost = False
    for piece in leader.pieces:
        whole = piece.finished.low_mm
        mm = told.get(piece.place, Fraction(0) if lost else whole)
        yield min(mm, piece.finished.high_mm)
        lost = mm == 0


def _taken(leader: Leader, spent: set[int]) -> list[Fraction]:
    """Return what the joints to sections that are cut anew take of each section, by its index."""
    taken = [Fraction(0)] * len(leader.pieces)
    for above in range(len(leader.joints)):
        if {above, above + 1} & spent:
            of_above, of_below = retied_mm(leader, above + 1)
            taken[above] += of_above
            taken[above + 1] += of_below
    return taken


def _impossible(leader: Leader, told: Mapping[int, Fraction]) -> Iterator[Fault]:
    sections = counted(len(leader.pieces), "section")
    for place, mm in told.items():
        if not 1 <= place <= len(leader.pieces):
            last = len(leader.pieces)
            instead = f"write a section from 1 to {last}" if last > 1 else "write 1"
            yield Fault(str(place), f"the leader has {sections}", instead)
            continue
        most = leader.pieces[place - 1].finished.high_mm
        if mm > most + FINEST_MM[leader.unit]:  # nobody measures finer
            found = f"{length(mm, leader.unit)} is more than its recipe has"
            yield Fault(str(place), found, f"write {length(most, leader.unit)} or less")
