"""A batch of leaders: what to cut for them from which spool, and what is to buy."""

from collections.abc import Sequence
from typing import NamedTuple

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.rack_file import Spool


class Order(Struct, frozen=True):
    """So many leaders of one recipe."""

    leader: Leader
    count: int
    numbers: Sequence[int] = ()  # that the book has given them

    def number(self, place: int) -> int:
        """Return what a leader is called by: its number in the book, or else in the order."""
        return self.numbers[place] if self.numbers else place + 1


class LeaderAt(NamedTuple):
    """One leader of a batch."""

    order: Order
    place: int  # in its order, from 0

    @property
    def number(self) -> int:
        return self.order.number(self.place)


class Cut(Struct, frozen=True):
    """Equal pieces of one section, cut one after the other."""

    order: Order
    piece: Piece
    places: Sequence[int]  # of the leaders in their order, that they are for

    @property
    def leader(self) -> Leader:
        return self.order.leader

    @property
    def count(self) -> int:
        return len(self.places)

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the leaders in the book; none where it has given none."""
        return tuple(map(self.order.number, self.places)) if self.order.numbers else ()

    @property
    def mm(self) -> Fraction:
        return self.count * self.piece.cut_mm


class Pull(Struct, frozen=True):
    """What a batch takes from one spool, or from one kind of line where there is no rack."""

    material: str
    diameter_mm: Fraction
    cuts: tuple[Cut, ...]  # the longest pieces first: a slip of the hand can still be cut shorter
    spool: Spool | None = None
    runs_out_at: LeaderAt | None = None  # the first that it would have a piece for, were it longer

    @property
    def mm(self) -> Fraction:
        return sum((cut.mm for cut in self.cuts), start=Fraction(0))

    @property
    def left_mm(self) -> Fraction | None:
        """What stays on the spool; None where there is no rack."""
        return None if self.spool is None else self.spool.left.mm - self.mm


class Shortage(Struct, frozen=True):
    """Pieces that no spool of the rack has line for, and so line to buy."""

    material: str
    diameter_mm: Fraction
    cuts: tuple[Cut, ...]
    first: LeaderAt

    @property
    def mm(self) -> Fraction:
        return sum((cut.mm for cut in self.cuts), start=Fraction(0))


class Batch(Struct, frozen=True):
    """A whole batch, spool by spool in the order that a leader is cut."""

    orders: tuple[Order, ...]
    pulls: tuple[Pull, ...]
    shortages: tuple[Shortage, ...] = ()
    spare_mm: Fraction = Fraction(
        0
    )  # what another way of cutting might spare of the shortages, at the most
