"""The line that leaders share: leaders and a rack in; pieces and spools, group by group, out."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.batches.packing import Bins
from tagend.cards.batches.spool_filling import Filling
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack, Spool


@dataclass(frozen=True, slots=True)
class LineSize:
    """Pieces of one line and length, whichever section they are for."""

    line: Line
    mm: Fraction
    sections: tuple[tuple[int, Piece], ...]  # each with the place of its leader


@dataclass(frozen=True, slots=True)
class LineGroup:
    """Pieces, and the spools that they alone come from."""

    sizes: tuple[LineSize, ...]  # the longest first
    spools: tuple[Spool, ...]  # the emptiest first, which are used up first
    bins: Bins
    part_mm: Fraction  # what the lengths of the bins are counted in

    def wanted(self, numbers: Sequence[int]) -> Filling:
        """Return how many pieces of each size so many of each leader take."""
        return tuple(sum(numbers[leader] for leader, _ in size.sections) for size in self.sizes)


def line_groups(leaders: Sequence[Leader], rack: Rack) -> tuple[LineGroup, ...]:
    """Return the groups in the order of a leader's cutting; what is bought is in none."""
    sizes: defaultdict[Line, defaultdict[Fraction, list[tuple[int, Piece]]]] = defaultdict(
        lambda: defaultdict(list)
    )
    for place, leader in enumerate(leaders):
        for piece in leader.pieces:
            if not piece.bought:
                sizes[Line.of(piece.section)][piece.cut_mm].append((place, piece))
    return tuple(
        _group(
            [LineSize(line, mm, tuple(sizes[line][mm])) for line in lines for mm in sizes[line]], of
        )
        for lines, of in _apart(sizes, rack)
    )


def _apart(lines: Iterable[Line], rack: Rack) -> Iterator[tuple[list[Line], list[Spool]]]:
    """Yield lines and spools in groups that share nothing.

    Lines that print alike may come from one spool, and so belong together.
    """
    left = list(lines)
    while left:
        group, joining = list[Line](), left[:1]
        while joining:
            group += joining
            left = [line for line in left if line not in joining]
            spools = list(dict.fromkeys(spool for line in group for spool in line.spools(rack)))
            joining = [line for line in left if any(line.is_of(spool) for spool in spools)]
        yield group, sorted(spools, key=lambda spool: spool.left.mm)


def _group(sizes: list[LineSize], spools: Sequence[Spool]) -> LineGroup:
    sizes.sort(key=lambda size: -size.mm)
    # All lengths are whole numbers of the largest part that they share.
    parts = math.lcm(*(size.mm.denominator for size in sizes))
    part = Fraction(math.gcd(*(int(size.mm * parts) for size in sizes)), parts)
    bins = Bins(
        lengths=tuple(int(size.mm / part) for size in sizes),
        rooms=tuple(spool.left.mm // part for spool in spools),
        fits=tuple(
            frozenset(place for place, size in enumerate(sizes) if size.line.is_of(spool))
            for spool in spools
        ),
    )
    return LineGroup(sizes=tuple(sizes), spools=tuple(spools), bins=bins, part_mm=part)
