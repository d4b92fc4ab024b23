"""A batch of leaders: what to cut for them from which spool, and what is to buy."""

from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.rack_file import Spool


@dataclass(frozen=True, slots=True)
class Order:
    """So many leaders of one recipe."""

    leader: Leader
    count: int


@dataclass(frozen=True, slots=True)
class Cut:
    """Equal pieces of one section, cut one after the other."""

    leader: Leader
    piece: Piece
    count: int

    @property
    def mm(self) -> Fraction:
        return self.count * self.piece.cut_mm


@dataclass(frozen=True, slots=True)
class Pull:
    """What a batch takes from one spool, or from one kind of line where there is no rack."""

    material: str
    diameter_mm: Fraction
    cuts: tuple[Cut, ...]  # the longest pieces first: a slip of the hand can still be cut shorter
    spool: Spool | None = None
    runs_out_at: int | None = (
        None  # the first leader that it would have a piece for, were it longer
    )

    @property
    def mm(self) -> Fraction:
        return sum((cut.mm for cut in self.cuts), start=Fraction(0))

    @property
    def left_mm(self) -> Fraction | None:
        """What stays on the spool; None where there is no rack."""
        return None if self.spool is None else self.spool.left.mm - self.mm


@dataclass(frozen=True, slots=True)
class Shortage:
    """Pieces that no spool of the rack has line for, and so line to buy."""

    material: str
    diameter_mm: Fraction
    cuts: tuple[Cut, ...]
    first_leader: int  # of the batch

    @property
    def mm(self) -> Fraction:
        return sum((cut.mm for cut in self.cuts), start=Fraction(0))


@dataclass(frozen=True, slots=True)
class Batch:
    """A whole batch, spool by spool in the order that a leader is cut."""

    orders: tuple[Order, ...]
    pulls: tuple[Pull, ...]
    shortages: tuple[Shortage, ...] = ()
    spare_mm: Fraction = Fraction(
        0
    )  # what another way of cutting might spare of the shortages, at the most
