"""Orders and a rack in; a batch out: the pieces of all leaders dealt to the spools."""

from collections.abc import Iterator, Sequence
from itertools import accumulate

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.batches.batch import Batch, Cut, LeaderAt, Order, Pull, Shortage
from tagend.cards.batches.budget import Budget
from tagend.cards.batches.line_groups import LineGroup, LineSize, line_groups
from tagend.cards.batches.packing import Packing, packed
from tagend.cards.batches.spool_filling import total
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack

STEPS = 800_000  # that the search for a way to cut may take

# An order's place in the batch, and of one of its pieces the places among all of the size, one
# for each leader of the order.
_Share = tuple[int, Piece, range]


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
        rows = _rows(group, packing, orders)
        pulls += _pulls(group, rows, orders)
        shortages += _shortages(rows, orders)
        spare += (total(group.bins.lengths, packing.left) - packing.least) * group.part_mm
    if rack is None:
        lines = [(lack.material, lack.diameter_mm, lack.cuts) for lack in shortages]
        return Batch(tuple(orders), tuple(Pull(*line) for line in lines))
    return Batch(
        orders=tuple(orders), pulls=tuple(pulls), shortages=tuple(shortages), spare_mm=spare
    )


def spool_labels(leader: Leader, rack: Rack | None) -> dict[int, str]:
    """Return what the person calls the spool of each section that the rack has, by its place."""
    alike = {
        piece.place: Line.of(piece.section).spools(rack)
        for piece in leader.pieces
        if not piece.bought
    }
    return {place: spools[0].label for place, spools in alike.items() if spools}


class _SizeRow(Struct, frozen=True):
    """The pieces of one size in a row, leader after leader, and which spool gives them."""

    size: LineSize
    shares: tuple[_Share, ...]
    ends: tuple[int, ...]  # where the pieces of each spool begin, those to buy, and the end

    def leader_after(self, spool: int) -> tuple[int, int]:
        """Return the order and the place of the first leader that a later spool has a piece for."""
        end = self.ends[spool + 1]
        return next((order, places.index(end)) for order, _, places in self.shares if end in places)

    def cuts(self, spool: int, orders: Sequence[Order]) -> Iterator[Cut]:
        """Yield what a spool gives of the size."""
        start, end = self.ends[spool : spool + 2]
        for order, piece, places in self.shares:
            if given := range(_below(start, places), _below(end, places)):
                yield Cut(orders[order], piece, given)


def _below(end: int, places: range) -> int:
    return len(range(places.start, min(end, places.stop), places.step))


def _rows(group: LineGroup, packing: Packing, orders: Sequence[Order]) -> list[_SizeRow]:
    """Return the sizes of a group, the longest first."""
    columns = zip(*packing.fillings, packing.left, strict=True)
    return [
        _SizeRow(size, tuple(_shares(size, orders)), (*accumulate(column, initial=0),))
        for size, column in zip(group.sizes, columns, strict=True)
    ]


def _shares(size: LineSize, orders: Sequence[Order]) -> Iterator[_Share]:
    start = 0
    for place, order in enumerate(orders):
        pieces = [piece for leader, piece in size.sections if leader == place]
        end = start + len(pieces) * order.count
        for at, piece in enumerate(pieces, start):
            yield place, piece, range(at, end, len(pieces))
        start = end


def _pulls(group: LineGroup, rows: Sequence[_SizeRow], orders: Sequence[Order]) -> Iterator[Pull]:
    for place, spool in enumerate(group.spools):
        cuts = tuple(cut for row in rows for cut in row.cuts(place, orders))
        left_mm = spool.left.mm - sum(cut.mm for cut in cuts)
        lacking = [
            row.leader_after(place)
            for size, row in enumerate(rows)
            if size in group.bins.fits[place] and row.size.mm > left_mm
            if row.ends[place + 1] < row.ends[-1]
        ]
        yield Pull(
            material=spool.material,
            diameter_mm=spool.diameter.mm,
            spool=spool,
            cuts=cuts,
            runs_out_at=_leader_at(min(lacking), orders) if lacking else None,
        )


def _leader_at(found: tuple[int, int], orders: Sequence[Order]) -> LeaderAt:
    order, place = found
    return LeaderAt(orders[order], place)


def _shortages(rows: Sequence[_SizeRow], orders: Sequence[Order]) -> Iterator[Shortage]:
    last = len(rows[0].ends) - 2
    lacking = [row for row in rows if row.ends[-2] < row.ends[-1]]
    for line in dict.fromkeys(row.size.line for row in rows):
        if of_line := [row for row in lacking if row.size.line == line]:
            yield Shortage(
                material=line.material,
                diameter_mm=line.diameter_mm,
                cuts=tuple(cut for row in of_line for cut in row.cuts(last, orders)),
                first=_leader_at(min(row.leader_after(last - 1) for row in of_line), orders),
            )
