"""The kinds of line that leaders share: leaders and a rack in; pieces and spools by kind out."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from tagend.cards.batches.packing import Bins, Filling
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack, Spool

_FINEST = 10_000  # parts of a mm up to which lengths are counted as they are
_COARSE = 100  # parts of a mm where they are finer: pieces are rounded up, spools down


class Member(NamedTuple):
    """One section of one of the leaders."""

    leader: int  # its place among them
    piece: Piece


class Size(NamedTuple):
    """Pieces of one line and length, whichever section they are for."""

    line: Line
    members: tuple[Member, ...]


class Kind(NamedTuple):
    """Pieces, and the spools that they alone come from."""

    sizes: tuple[Size, ...]  # the longest first
    spools: tuple[Spool, ...]  # the emptiest first, which are used up first
    bins: Bins

    def wanted(self, numbers: Sequence[int]) -> Filling:
        """Return how many pieces of each size so many of each leader take."""
        return tuple(sum(numbers[member.leader] for member in size.members) for size in self.sizes)


def kinds_of(leaders: Sequence[Leader], rack: Rack) -> tuple[Kind, ...]:
    """Return the kinds of line that the leaders are cut from; what is bought is none."""
    by_line: defaultdict[Line, list[Member]] = defaultdict(list)
    for place, leader in enumerate(leaders):
        for piece in leader.pieces:
            if not piece.section.bought:
                line = Line.of(piece.section)
                by_line[line].append(Member(place, piece))
    return tuple(
        _kind({line: by_line[line] for line in lines}, spools)
        for lines, spools in _apart(by_line, rack)
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
            spools = [spool for spool in rack.spools if any(line.is_of(spool) for line in group)]
            joining = [line for line in left if any(line.is_of(spool) for spool in spools)]
        yield group, sorted(spools, key=lambda spool: spool.left.mm)


def _kind(by_line: dict[Line, list[Member]], spools: Sequence[Spool]) -> Kind:
    members = [(line, member) for line, row in by_line.items() for member in row]
    part = _part_mm([member.piece.cut_mm for _, member in members])
    alike: defaultdict[tuple[int, Line], list[Member]] = defaultdict(list)
    for line, member in members:
        alike[math.ceil(member.piece.cut_mm / part), line].append(member)
    longest_first = sorted(alike.items(), key=lambda item: -item[0][0])
    sizes = tuple(Size(line, tuple(row)) for (_, line), row in longest_first)
    bins = Bins(
        lengths=tuple(length for (length, _), _ in longest_first),
        rooms=tuple(spool.left.mm // part for spool in spools),
        fits=tuple(
            frozenset(place for place, size in enumerate(sizes) if size.line.is_of(spool))
            for spool in spools
        ),
    )
    return Kind(sizes, tuple(spools), bins)


def _part_mm(lengths: Sequence[Fraction]) -> Fraction:
    """Return the largest length that all pieces are whole numbers of, or a hundredth of a mm."""
    parts = math.lcm(*(length.denominator for length in lengths))
    if parts > _FINEST:
        return Fraction(1, _COARSE)
    return Fraction(math.gcd(*(int(length * parts) for length in lengths)), parts)
