"""What a step costs that is not even: a net of strands in, the cost of each step out."""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from tagend.cards.propose.links import changes
from tagend.cards.propose.net import Meeting, Net
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Wish

_FINENESS = 1_000_000  # logarithms are counted in millionths, so that costs are whole numbers

# What a change of material costs, in knots; our choice. Unlike strands hinge, and common practice
# in print stays in one kind until the tippet.
_CHANGE_AT_TIPPET = 1
_CHANGE_ABOVE = 10


def step_costs(net: Net) -> dict[Meeting, int]:
    """Return for each step the square of its departure from the even one, and of a new material.

    All is counted `fewest` squared times, so that the even step, `drop / fewest`, is whole. A
    start costs the step from a bought butt, or nothing.
    """
    links, strands, bought = net.links, net.strands, net.links.bought
    chains: dict[Meeting, list[Supply]] = {
        (upper, lower): links.chain(strands[upper], strands[lower], lower in net.ends)
        for upper, row in enumerate(net.below)
        for lower in row
    }
    for start in net.starts:
        strand = strands[start]
        chain = links.chain(bought, strand, start in net.ends) if bought else [strand]
        chains[None, start] = chain
    return {places: _cost(net, chain, places[1] in net.ends) for places, chain in chains.items()}


def _cost(net: Net, chain: Sequence[Supply], at_tippet: bool) -> int:
    heights = [_height(strand.diameter.mm) for strand in chain]
    drop, fewest = _drop(net.wish), net.fewest
    cost = sum((fewest * (above - below) - drop) ** 2 for above, below in pairwise(heights))
    if changes(chain):
        cost += knot_cost(net) * (_CHANGE_AT_TIPPET if at_tippet else _CHANGE_ABOVE)
    return cost


def knot_cost(net: Net) -> int:
    """Return about what a knot more costs: the square of the even step."""
    return _drop(net.wish) ** 2


def least_cost(net: Net, knots: int) -> int:
    """Return what so many steps cost at the least, more than `fewest`: with all of them alike.

    `a` steps that make `b` have a sum of squares of `b * b / a` or more. The diameters may differ
    from those asked for by what print rounds off, so the longest drop there is counts.
    """
    steps = knots + net.knots_beside
    thickest = max(_top(net, start) for start in net.starts)
    longest = _height(thickest) - _height(min(strand.diameter.mm for strand in net.strands))
    short = steps * _drop(net.wish) - net.fewest * longest
    return max(short, 0) ** 2 // max(steps, 1)


def _top(net: Net, start: int) -> Fraction:
    return (net.links.bought or net.strands[start]).diameter.mm


def _drop(wish: Wish) -> int:
    """Return how far it is from the butt to the tippet, on the scale of costs."""
    return _height(wish.butt.mm) - _height(wish.tippet.diameter.mm)


def _height(diameter_mm: Fraction) -> int:
    return round(_FINENESS * math.log(diameter_mm))
