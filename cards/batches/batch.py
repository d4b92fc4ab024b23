"""A batch of leaders from a rack: leaders, counts and spools in; cuts from each spool out."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack, Spool

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
    on_rack = [_Source(Line.of(spool), spool, spool.left.mm) for spool in _spools(rack)]
    lines: dict[Line, list[_Source]] = {}
    for number, place, piece in _pieces(orders):
        line = Line.of(piece.section)
        if line not in lines:
            alike = [source for source in on_rack if source.line.is_like(line)]
            lines[line] = [*alike, _Source(line, None, Fraction(0))]
        _choose(lines[line], piece, number).give(place, piece, number)
    pulls, shortages = [], []
    # Lines that print alike share a spool, which stands in the batch once.
    for source in dict.fromkeys(source for sources in lines.values() for source in sources):
        cuts = source.cuts(orders)
        if source.spool is not None or rack is None:
            pulls.append(Pull(*source.line, source.spool, cuts, source.runs_out_at))
        elif cuts:
            shortages.append(Shortage(*source.line, cuts, source.first))
    return Batch(tuple(orders), tuple(pulls), tuple(shortages))


def spool_labels(leader: Leader, rack: Rack | None) -> dict[int, str]:
    """Return what the person calls the spool of each section that the rack has, by its place."""
    labels = {}
    for piece in leader.pieces:
        line = Line.of(piece.section)
        alike = [spool for spool in _spools(rack) if line.is_of(spool)]
        if alike and not piece.section.bought:
            labels[piece.place] = alike[0].label
    return labels


def _spools(rack: Rack | None) -> tuple[Spool, ...]:
    return rack.spools if rack else ()


@dataclass(slots=True, eq=False)
class _Source:
    """A spool while it is being cut from; without a spool, line that never ends."""

    line: Line
    spool: Spool | None
    left_mm: Fraction
    given: Counter[tuple[int, int]] = field(default_factory=Counter)  # by order and section
    first: int = 0  # the first leader that it gave a piece for
    runs_out_at: int | None = None

    def give(self, place: int, piece: Piece, number: int) -> None:
        if self.spool is not None:
            self.left_mm -= piece.cut_mm
        self.given[place, piece.place] += 1
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


def _choose(sources: Sequence[_Source], piece: Piece, number: int) -> _Source:
    """Return the emptiest source that has the piece, and note at which leader others fail."""
    *spools, endless = sources
    holding = []
    for source in spools:
        if source.left_mm >= piece.cut_mm:
            holding.append(source)
        elif source.runs_out_at is None:
            source.runs_out_at = number
    return min(holding, key=lambda source: source.left_mm, default=endless)
