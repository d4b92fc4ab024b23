"""A batch cut from the rack as well as can be: orders and a rack in; a batch out, exact."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import accumulate
from typing import NamedTuple

from tagend.cards.batches.batch import Batch, Cut, Order, Pull, Shortage, batch
from tagend.cards.batches.kinds import Kind, Member, kinds_of
from tagend.cards.batches.packing import least_left_over, packed, with_one_more
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack


def best_batch(orders: Sequence[Order], rack: Rack) -> Batch:
    """Return what to cut where, so that as little line as can be is to buy.

    Where cutting leader by leader finds line for all of them, it stays at that.
    """
    plain = batch(orders, rack)
    if not plain.shortages:
        return plain
    pulls: list[Pull] = []
    shortages: list[Shortage] = []
    for kind in kinds_of([order.leader for order in orders], rack):
        *from_spools, bought = _shares(kind, orders)
        for spool, share in zip(kind.spools, from_spools, strict=True):
            cuts = tuple(part.cut(orders) for part in share)
            pulls.append(Pull(spool.material, spool.diameter.mm, spool, cuts, None))
        shortages += _shortages(bought, orders)
    return Batch(tuple(orders), tuple(pulls), tuple(shortages))


class _Part(NamedTuple):
    """Equal pieces for some of the leaders of one order."""

    line: Line
    member: Member
    first: int  # of those leaders; the first of the order is 1
    pieces: int

    def cut(self, orders: Sequence[Order]) -> Cut:
        return Cut(orders[self.member.leader].leader, self.member.piece, self.pieces)


def _shares(kind: Kind, orders: Sequence[Order]) -> list[list[_Part]]:
    """Return what each spool gives, the longest first, and last what is to buy."""
    wanted = kind.wanted([order.count for order in orders])
    bins = with_one_more(kind.bins, least_left_over(kind.bins, wanted))
    fillings = packed(bins, wanted)
    assert fillings is not None
    shares: list[list[_Part]] = [[] for _ in fillings]
    for place, size in enumerate(kind.sizes):
        ends = list(accumulate((filling[place] for filling in fillings), initial=0))
        for member, start in _in_a_row(size.members, orders):
            stop = start + orders[member.leader].count
            for share, low, high in zip(shares, ends, ends[1:], strict=False):
                pieces = min(high, stop) - max(low, start)
                if pieces > 0:
                    share.append(_Part(size.line, member, max(low - start, 0) + 1, pieces))
    return shares


def _in_a_row(members: Sequence[Member], orders: Sequence[Order]) -> Iterator[tuple[Member, int]]:
    """Yield each section with the place of its first piece, all pieces laid in a row."""
    counts = (orders[member.leader].count for member in members)
    yield from zip(members, accumulate(counts, initial=0), strict=False)


def _shortages(bought: Sequence[_Part], orders: Sequence[Order]) -> Iterator[Shortage]:
    before = list(accumulate((order.count for order in orders), initial=0))
    by_line: defaultdict[Line, list[_Part]] = defaultdict(list)
    for part in bought:
        by_line[part.line].append(part)
    for line, parts in by_line.items():
        first = min(before[part.member.leader] + part.first for part in parts)
        yield Shortage(*line, tuple(part.cut(orders) for part in parts), first)
