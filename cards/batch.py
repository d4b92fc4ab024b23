"""A batch of leaders from a rack: leaders, counts and spools in; cuts from each spool out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from cards.knots import PRINTED_MM
from cards.leader import Leader, Piece
from cards.rack_file import Rack, Spool

COUNT_MOST = 10_000  # leaders of a recipe; the season of a large shop


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
    spool: Spool | None
    cuts: tuple[Cut, ...]  # the longest pieces first: a slip of the hand can still be cut shorter
    runs_out_at: int | None  # the first leader of the batch that it has no piece for

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
    shortages: tuple[Shortage, ...]


def batch(orders: Sequence[Order], rack: Rack | None) -> Batch:
    """Return what to cut where, leader by leader; of like spools the emptiest that will do first.

    Without a rack, each kind of line is one spool without end.
    """
    lines: dict[tuple[str, Fraction], list[_Source]] = {}
    for number, place, piece in _pieces(orders):
        section = piece.section
        line = (section.material, section.diameter.mm)
        sources = lines.setdefault(line, _sources(*line, rack))
        _choose(sources, piece, number).give(place, piece, number)
    pulls, shortages = [], []
    for (material, diameter), sources in lines.items():
        for source in sources:
            cuts = source.cuts(orders)
            if source.spool is not None or rack is None:
                pulls.append(Pull(material, diameter, source.spool, cuts, source.runs_out_at))
            elif cuts:
                shortages.append(Shortage(material, diameter, cuts, source.first))
    return Batch(tuple(orders), tuple(pulls), tuple(shortages))


def spool_labels(leader: Leader, rack: Rack | None) -> dict[int, str]:
    """Return what the person calls the spool of each section that the rack has, by its place."""
    labels = {}
    for piece in leader.pieces:
        section = piece.section
        first, *_ = _sources(section.material, section.diameter.mm, rack)
        if first.spool is not None and not section.bought:
            labels[piece.place] = first.spool.label
    return labels


@dataclass(slots=True)
class _Source:
    """A spool while it is being cut from; without a spool, line that never ends."""

    spool: Spool | None
    left_mm: Fraction
    given: dict[tuple[int, int], int]  # how many, by order and by place in the leader
    first: int = 0  # the first leader that it gave a piece for
    runs_out_at: int | None = None

    def has(self, piece: Piece) -> bool:
        return self.spool is None or self.left_mm >= piece.cut_mm

    def give(self, place: int, piece: Piece, number: int) -> None:
        self.left_mm -= piece.cut_mm
        key = place, piece.place
        self.given[key] = self.given.get(key, 0) + 1
        self.first = self.first or number

    def cuts(self, orders: Sequence[Order]) -> tuple[Cut, ...]:
        leaders = [order.leader for order in orders]
        cuts = [
            Cut(leaders[at], leaders[at].pieces[place - 1], count)
            for (at, place), count in self.given.items()
        ]
        return tuple(sorted(cuts, key=lambda cut: -cut.piece.cut_mm))


def _pieces(orders: Sequence[Order]) -> Iterator[tuple[int, int, Piece]]:
    """Yield every piece to cut with the number of its leader and the place of its order."""
    number = 0
    for place, order in enumerate(orders):
        cut = [piece for piece in order.leader.pieces if not piece.section.bought]
        for _ in range(order.count):
            number += 1
            for piece in cut:
                yield number, place, piece


def _sources(material: str, diameter_mm: Fraction, rack: Rack | None) -> list[_Source]:
    """Return the rack's spools of a line, and last the line that is not on it."""
    spools = [
        spool
        for spool in (rack.spools if rack else ())
        if spool.material == material and abs(spool.diameter.mm - diameter_mm) < PRINTED_MM
    ]
    on_rack = [_Source(spool, spool.left.mm, {}) for spool in spools]
    return [*on_rack, _Source(None, Fraction(0), {})]


def _choose(sources: Sequence[_Source], piece: Piece, number: int) -> _Source:
    """Return the emptiest source that has the piece, and note at which leader others fail."""
    for source in sources:
        if not source.has(piece) and source.runs_out_at is None:
            source.runs_out_at = number
    spools = [source for source in sources if source.spool is not None and source.has(piece)]
    return min(spools, key=lambda source: source.left_mm, default=sources[-1])
