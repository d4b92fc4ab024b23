"""The line that leaders share: leaders and a rack in; pieces and spools, group by group, out."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.batches.packing import Bins
from tagend.cards.batches.spool_filling import Filling
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack, Spool


class LineSize(Struct, frozen=True):
    """Pieces of one line and length, whichever section they are for."""

    line: Line
    mm: Fraction
    sections: tuple[tuple[int, Piece], ...]  # each with the place of its leader


class LineGroup(Struct, frozen=True):
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
        for lines, of in _apart(list(sizes), rack)
    )


def _apart(lines: Sequence[Line], rack: Rack) -> Iterator[tuple[list[Line], list[Spool]]]:
    """Yield lines and spools in groups that share nothing.

    Lines that print alike may come from one spool, and so belong together. In the order of their
    diameters each line's spools stand in a row, so that only neighbours can share one.
    """
    spools = sorted(rack.spools, key=Line.of)
    kinds = list(map(Line.of, spools))
    groups: list[tuple[list[Line], range]] = []
    for line in sorted(lines):
        there = line.among(kinds)
        if groups and there and there.start < groups[-1][1].stop:
            there = range(groups[-1][1].start, there.stop)
            groups[-1] = [*groups[-1][0], line], there
        else:
            groups.append(([line], there))
    place = {line: at for at, line in enumerate(lines)}
    for group, there in sorted(groups, key=lambda each: min(place[line] for line in each[0])):
        of = sorted(spools[there.start : there.stop], key=lambda spool: spool.left.mm)
        yield sorted(group, key=place.__getitem__), of


def _group(sizes: list[LineSize], spools: Sequence[Spool]) -> LineGroup:
    sizes.sort(key=lambda size: -size.mm)
    # All lengths are whole numbers of the largest part that they share.
    parts = math.lcm(*(size.mm.denominator for size in sizes))
    part = Fraction(math.gcd(*(int(size.mm * parts) for size in sizes)), parts)
    kinds = sorted({Line.of(spool) for spool in spools})
    homes = [size.line.among(kinds) for size in sizes]
    fits = {
        kind: frozenset(size for size, home in enumerate(homes) if at in home)
        for at, kind in enumerate(kinds)
    }
    bins = Bins(
        lengths=tuple(int(size.mm / part) for size in sizes),
        rooms=tuple(spool.left.mm // part for spool in spools),
        fits=tuple(fits[Line.of(spool)] for spool in spools),
    )
    return LineGroup(sizes=tuple(sizes), spools=tuple(spools), bins=bins, part_mm=part)
