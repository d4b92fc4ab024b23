"""Which strand may hang below which, and what each step costs: a wish and strands in, a net out."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.supplies import Supply, fullest, is_near
from tagend.cards.propose.wish import Wish

_FINENESS = 1_000_000  # logarithms are counted in millionths, so that costs are whole numbers

# What a change of material costs, in knots; our choice. Unlike strands hinge, and common practice
# in print stays in one kind until the tippet.
_CHANGE_AT_TIPPET = 1
_CHANGE_ABOVE = 10


class Net(NamedTuple):
    """The strands that a taper may take, thickest first, and how they may follow each other."""

    strands: tuple[Supply, ...]
    starts: tuple[int, ...]
    ends: frozenset[int]
    below: tuple[tuple[int, ...], ...]  # the strands that may hang below each
    heights: tuple[int, ...]  # the diameters on the scale of costs
    fewest: int  # knots that the largest step allows
    drop: int  # from the butt to the tippet, on the scale of costs

    @property
    def joints(self) -> Iterator[tuple[int, int]]:
        """The pairs of which one may hang below the other."""
        return ((upper, lower) for upper, row in enumerate(self.below) for lower in row)


def net_of(wish: Wish, strands: Sequence[Supply]) -> Net:
    """Return the strands from the butt to the tippet, and every step that is small enough."""
    tippet_mm = wish.tippet.diameter.mm
    body = [strand for strand in fullest(_body(wish, strands)) if _is_thicker(strand, tippet_mm)]
    ends = fullest(_ends(wish, strands))
    whole = (*body, *ends)
    return Net(
        strands=whole,
        starts=tuple(place for place, s in enumerate(body) if is_near(s.diameter, wish.butt)),
        ends=frozenset(range(len(body), len(whole))),
        below=tuple(
            tuple(
                other
                for other in range(place + 1, len(whole))
                if place < len(body)
                and PRINTED_MM <= strand.diameter.mm - whole[other].diameter.mm <= wish.step_mm
            )
            for place, strand in enumerate(whole)
        ),
        heights=tuple(_height(strand.diameter.mm) for strand in whole),
        fewest=math.ceil((wish.butt.mm - tippet_mm) / wish.step_mm),
        drop=_height(wish.butt.mm) - _height(tippet_mm),
    )


def step_cost(net: Net, upper: int, lower: int) -> int:
    """Return the square of a step's departure from the even one, and what a new material costs.

    Both are counted `fewest` squared times, so that the even step, `drop / fewest`, is whole.
    """
    uneven = (net.fewest * (net.heights[upper] - net.heights[lower]) - net.drop) ** 2
    if net.strands[upper].material == net.strands[lower].material:
        return uneven
    return uneven + knot_cost(net) * (_CHANGE_AT_TIPPET if lower in net.ends else _CHANGE_ABOVE)


def knot_cost(net: Net) -> int:
    """Return about what a knot more costs: the square of the even step."""
    return net.drop**2


def least_cost(net: Net, knots: int) -> int:
    """Return what so many steps cost at the least, more than `fewest`: with all of them alike.

    `a` steps that make `b` have a sum of squares of `b * b / a` or more. The diameters may differ
    from those asked for by what print rounds off, so the longest drop there is counts.
    """
    longest = max(net.heights[place] for place in net.starts) - min(net.heights)
    short = knots * net.drop - net.fewest * longest
    return max(short, 0) ** 2 // knots


def _body(wish: Wish, strands: Sequence[Supply]) -> list[Supply]:
    return [strand for strand in strands if wish.material in (None, strand.material)]


def _ends(wish: Wish, strands: Sequence[Supply]) -> list[Supply]:
    tippet = wish.tippet
    material = tippet.material or wish.material
    return [
        strand
        for strand in strands
        if is_near(strand.diameter, tippet.diameter)
        and material in (None, strand.material)
        and (tippet.strength is None or strand.strength == tippet.strength)
    ]


def _is_thicker(strand: Supply, than_mm: Fraction) -> bool:
    return strand.diameter.mm - than_mm >= PRINTED_MM


def _height(diameter_mm: Fraction) -> int:
    return round(_FINENESS * math.log(diameter_mm))
