"""Orders and a rack in; a batch out: the pieces of all leaders dealt to the spools."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import accumulate
from typing import NamedTuple

from tagend.cards.batches.batch import Batch, Cut, Order, Pull, Shortage
from tagend.cards.batches.budget import Budget
from tagend.cards.batches.line_groups import LineGroup, LineSize, line_groups
from tagend.cards.batches.packing import Packing, packed
from tagend.cards.batches.spool_filling import total
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack

STEPS = 1_000_000  # that the search for a way to cut may take


def cut_batch(orders: Sequence[Order], rack: Rack | None, steps: int = STEPS) -> Batch:
    """Return what to cut where, so that as little line as can be is to buy.

    Of like spools the emptiest are used up first. Without a rack, each kind of line is one spool
    without end. `spare_mm` is above 0 only where the search has used up its steps.
    """
    groups = line_groups([order.leader for order in orders], rack or Rack(()))
    budget = Budget(steps)
    pulls: list[Pull] = []
    shortages: list[Shortage] = []
    spare = Fraction(0)
    for place, group in enumerate(groups):
        wanted = group.wanted([order.count for order in orders])
        packing = packed(group.bins, wanted, budget.part(len(groups) - place))
        dealt = _dealt(group, packing, orders)
        pulls += _pulls(group, dealt)
        shortages += _shortages(dealt)
        spare += (total(group.bins.lengths, packing.left) - packing.least) * group.part_mm
    if rack is None:
        pulls = [Pull(lack.material, lack.diameter_mm, None, lack.cuts, None) for lack in shortages]
        return Batch(tuple(orders), tuple(pulls), (), Fraction(0))
    return Batch(tuple(orders), tuple(pulls), tuple(shortages), spare)


def spool_labels(leader: Leader, rack: Rack | None) -> dict[int, str]:
    """Return what the person calls the spool of each section that the rack has, by its place."""
    alike = {
        piece.place: Line.of(piece.section).spools(rack)
        for piece in leader.pieces
        if not piece.section.bought
    }
    return {place: spools[0].label for place, spools in alike.items() if spools}


class _OrderShare(NamedTuple):
    """The pieces of one size for one order: the same of each leader, leader after leader."""

    order: Order
    pieces: tuple[Piece, ...]  # of a leader
    start: int  # place of the first among all pieces of the size, from 0
    before: int  # leaders of the batch


class _Dealt(NamedTuple):
    """The pieces of one size in a row, leader after leader, and which spool gives them."""

    size: LineSize
    shares: tuple[_OrderShare, ...]
    ends: tuple[int, ...]  # where the pieces of each spool begin, those to buy, and the end

    def leader_after(self, spool: int) -> int:
        """Return the number in the batch of the first leader that a later spool has a piece for."""
        place = self.ends[spool + 1]
        share = [share for share in self.shares if share.start <= place][-1]
        return share.before + (place - share.start) // len(share.pieces) + 1

    def cuts(self, spool: int) -> Iterator[Cut]:
        """Yield what a spool gives of the size."""
        for order, pieces, start, _ in self.shares:
            each = len(pieces)
            low = max(self.ends[spool] - start, 0)
            high = min(self.ends[spool + 1] - start, each * order.count)
            for at, piece in enumerate(pieces if low < high else ()):
                count = (at - low) // each - (at - high) // each
                if count:
                    yield Cut(order.leader, piece, count)


def _dealt(group: LineGroup, packing: Packing, orders: Sequence[Order]) -> list[_Dealt]:
    """Return the sizes of a group, the longest first."""
    columns = zip(*packing.fillings, packing.left, strict=True)
    return [
        _Dealt(size, tuple(_shares(size, orders)), (*accumulate(column, initial=0),))
        for size, column in zip(group.sizes, columns, strict=True)
    ]


def _shares(size: LineSize, orders: Sequence[Order]) -> Iterator[_OrderShare]:
    start = before = 0
    for place, order in enumerate(orders):
        pieces = tuple(piece for leader, piece in size.sections if leader == place)
        if pieces:
            yield _OrderShare(order, pieces, start, before)
        start += len(pieces) * order.count
        before += order.count


def _pulls(group: LineGroup, dealt: Sequence[_Dealt]) -> Iterator[Pull]:
    for place, spool in enumerate(group.spools):
        cuts = tuple(cut for row in dealt for cut in row.cuts(place))
        left_mm = spool.left.mm - sum(cut.mm for cut in cuts)
        lacking = [
            row.leader_after(place)
            for row in dealt
            if row.size.line.is_of(spool) and row.size.mm > left_mm
            if row.ends[place + 1] < row.ends[-1]
        ]
        yield Pull(*Line.of(spool), spool, cuts, min(lacking, default=None))


def _shortages(dealt: Sequence[_Dealt]) -> Iterator[Shortage]:
    last = len(dealt[0].ends) - 2
    for line in dict.fromkeys(row.size.line for row in dealt):
        rows = [row for row in dealt if row.size.line == line and row.ends[-2] < row.ends[-1]]
        if rows:
            cuts = tuple(cut for row in rows for cut in row.cuts(last))
            yield Shortage(*line, cuts, min(row.leader_after(last - 1) for row in rows))
