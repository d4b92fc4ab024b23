"""Which strand may hang below which, at what cost, and what knots take: a wish and strands in."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from tagend.cards.base.units import parse_span
from tagend.cards.leader.allowance import joint_allowances
from tagend.cards.leader.joints import joints
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.supplies import Supply, fullest, is_near
from tagend.cards.propose.tape import Tape, tape_for
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Recipe, Section

# Two strands by their places, of which one hangs below the other; None stands beyond an end.
Meeting = tuple[int | None, int | None]

_FINENESS = 1_000_000  # logarithms are counted in millionths, so that costs are whole numbers

# What a change of material costs, in knots; our choice. Unlike strands hinge, and common practice
# in print stays in one kind until the tippet.
_CHANGE_AT_TIPPET = 1
_CHANGE_ABOVE = 10

_SOME_LENGTH = parse_span("1 ft")  # what a knot takes does not depend on it
_NONE = Fraction(0)


@dataclass(frozen=True, slots=True)
class Net:
    """The strands that a taper may take, thickest first, and how they may follow each other."""

    wish: Wish
    tape: Tape
    strands: tuple[Supply, ...]
    starts: tuple[int, ...]
    ends: frozenset[int]
    below: tuple[tuple[int, ...], ...]  # the strands that may hang below each
    takes: Mapping[Meeting, tuple[Fraction, Fraction]]  # mm of the strands above and below a knot
    plenty: frozenset[int]  # strands that have enough for the whole leader

    @property
    def fewest(self) -> int:
        """The knots that the largest step allows."""
        wish = self.wish
        return math.ceil((wish.butt.mm - wish.tippet.diameter.mm) / wish.step_mm)

    def room(self, above: int | None, strand: int, below: int | None) -> int:
        """Return the longest piece, in marks, of a strand between two others, or at an end."""
        if strand in self.plenty:
            return self.tape.total
        knots_mm = self.takes[above, strand][1] + self.takes[strand, below][0]
        return self.tape.room(self.strands[strand].left_mm, knots_mm)

    def rooms(self, path: Sequence[int]) -> list[int]:
        """Return the longest piece of each strand of a whole leader, in marks."""
        around = zip([None, *path], path, [*path[1:], None], strict=False)
        return [self.room(*places) for places in around]


def net_of(wish: Wish, strands: Sequence[Supply], practice: Practice) -> Net:
    """Return the strands from the butt to the tippet, and every step that is small enough."""
    tape = tape_for(wish.total, practice)
    body = fullest([strand for strand in strands if _is_of_body(strand, wish)])
    whole = (*body, *fullest([strand for strand in strands if _is_tippet(strand, wish)]))
    starts = tuple(place for place, s in enumerate(body) if is_near(s.diameter, wish.butt))
    ends = frozenset(range(len(body), len(whole)))
    below = tuple(() if at in ends else _below(at, whole, wish) for at in range(len(whole)))
    takes = _takes(whole, below, product(starts, ends), practice)
    most_mm = 2 * max((mm for pair in takes.values() for mm in pair), default=_NONE)
    plenty = frozenset(
        place
        for place, strand in enumerate(whole)
        if tape.room(strand.left_mm, most_mm) == tape.total
    )
    return Net(
        wish=wish,
        tape=tape,
        strands=whole,
        starts=starts,
        ends=ends,
        below=below,
        takes=takes,
        plenty=plenty,
    )


def step_costs(net: Net) -> dict[tuple[int, int], int]:
    """Return for each step the square of its departure from the even one, and of a new material.

    All is counted `fewest` squared times, so that the even step, `drop / fewest`, is whole.
    """
    heights = [_height(strand.diameter.mm) for strand in net.strands]
    drop, fewest, knot = _drop(net.wish), net.fewest, knot_cost(net)
    costs = {}
    for upper, row in enumerate(net.below):
        for lower in row:
            cost = (fewest * (heights[upper] - heights[lower]) - drop) ** 2
            if net.strands[upper].material != net.strands[lower].material:
                cost += knot * (_CHANGE_AT_TIPPET if lower in net.ends else _CHANGE_ABOVE)
            costs[upper, lower] = cost
    return costs


def knot_cost(net: Net) -> int:
    """Return about what a knot more costs: the square of the even step."""
    return _drop(net.wish) ** 2


def least_cost(net: Net, knots: int) -> int:
    """Return what so many steps cost at the least, more than `fewest`: with all of them alike.

    `a` steps that make `b` have a sum of squares of `b * b / a` or more. The diameters may differ
    from those asked for by what print rounds off, so the longest drop there is counts.
    """
    thickest = max(net.strands[place].diameter.mm for place in net.starts)
    longest = _height(thickest) - _height(min(strand.diameter.mm for strand in net.strands))
    short = knots * _drop(net.wish) - net.fewest * longest
    return max(short, 0) ** 2 // knots


def _is_of_body(strand: Supply, wish: Wish) -> bool:
    is_thicker = strand.diameter.mm - wish.tippet.diameter.mm >= PRINTED_MM
    return is_thicker and wish.material in (None, strand.material)


def _is_tippet(strand: Supply, wish: Wish) -> bool:
    return (
        is_near(strand.diameter, wish.tippet.diameter)
        and wish.tippet_material in (None, strand.material)
        and wish.tippet.strength in (None, strand.strength)
    )


def _below(place: int, strands: Sequence[Supply], wish: Wish) -> tuple[int, ...]:
    mm = strands[place].diameter.mm
    lower = range(place + 1, len(strands))
    return tuple(at for at in lower if PRINTED_MM <= mm - strands[at].diameter.mm <= wish.step_mm)


def _takes(
    strands: Sequence[Supply],
    below: Sequence[Sequence[int]],
    ends: Iterable[tuple[int, int]],
    practice: Practice,
) -> dict[Meeting, tuple[Fraction, Fraction]]:
    """Return what every knot takes; `ends` pairs the strands at the butt with those at the fly."""

    def pair(*places: int) -> Recipe:
        both = (strands[place] for place in places)
        return Recipe("", tuple(Section(_SOME_LENGTH, s.diameter, s.material) for s in both))

    takes: dict[Meeting, tuple[Fraction, Fraction]] = {}
    for upper, row in enumerate(below):
        for lower in row:
            (joint,) = joints(pair(upper, lower), practice)
            one, other = joint_allowances(joint, practice)
            takes[upper, lower] = one.mm, other.mm
    for upper, lower in ends:
        first, last = work_out(pair(upper, lower), practice).pieces
        takes[None, upper], takes[lower, None] = (_NONE, first.at_butt.mm), (last.at_fly.mm, _NONE)
    return takes


def _drop(wish: Wish) -> int:
    """Return how far it is from the butt to the tippet, on the scale of costs."""
    return _height(wish.butt.mm) - _height(wish.tippet.diameter.mm)


def _height(diameter_mm: Fraction) -> int:
    return round(_FINENESS * math.log(diameter_mm))
