"""How long a piece each strand gives: a net of strands and the tyer's knots in, marks out."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import chain, product
from typing import NamedTuple

from tagend.cards.base.units import parse_span
from tagend.cards.leader.allowance import joint_allowances
from tagend.cards.leader.joints import joints
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.net import Net
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.tape import Tape
from tagend.cards.recipe.recipe import Recipe, Section


class Rooms(NamedTuple):
    """The longest finished piece of each strand, beside the knots to its neighbours, in marks."""

    tape: Tape
    strands: tuple[Supply, ...]
    takes: dict[tuple[int, int], tuple[Fraction, Fraction]]  # mm above and below each joint
    at_butt: dict[int, Fraction]
    at_fly: dict[int, Fraction]
    plenty: frozenset[int]  # strands that have enough for the whole leader

    def room(self, above: int | None, strand: int, below: int | None) -> int:
        """Return the longest piece of a strand between two others, or at an end."""
        if strand in self.plenty:
            return self.tape.total
        upper = self.at_butt[strand] if above is None else self.takes[above, strand][1]
        lower = self.at_fly[strand] if below is None else self.takes[strand, below][0]
        return self.tape.room(self.strands[strand].left_mm, upper + lower)

    def along(self, path: Sequence[int]) -> list[int]:
        """Return the longest piece of each strand of a whole leader."""
        around = zip([None, *path], path, [*path[1:], None], strict=False)
        return [self.room(above, strand, below) for above, strand, below in around]

    def without_end(self) -> "Rooms":
        """Return the same with as much line on every spool as is wanted."""
        return self._replace(plenty=frozenset(range(len(self.strands))))


def rooms_of(net: Net, tape: Tape, practice: Practice) -> Rooms:
    """Return what the knots of every step and end take from its strands."""
    takes = {}
    for upper, lower in net.joints:
        (joint,) = joints(_pair(net, upper, lower), practice)
        above, below = joint_allowances(joint, practice)
        takes[upper, lower] = above.mm, below.mm
    at_butt, at_fly = {}, {}
    for upper, lower in product(net.starts, net.ends):
        first, last = work_out(_pair(net, upper, lower), practice).pieces
        at_butt[upper], at_fly[lower] = first.at_butt.mm, last.at_fly.mm
    every = (*chain.from_iterable(takes.values()), *at_butt.values(), *at_fly.values())
    most_mm = 2 * max(every, default=Fraction(0))
    plenty = frozenset(
        place
        for place, strand in enumerate(net.strands)
        if tape.room(strand.left_mm, most_mm) == tape.total
    )
    return Rooms(tape, net.strands, takes, at_butt, at_fly, plenty)


_SOME_LENGTH = parse_span("1 ft")  # what a knot takes does not depend on it


def _pair(net: Net, upper: int, lower: int) -> Recipe:
    strands = (net.strands[upper], net.strands[lower])
    sections = (Section(_SOME_LENGTH, strand.diameter, strand.material) for strand in strands)
    return Recipe("", tuple(sections))
