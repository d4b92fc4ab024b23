"""How long each section is: shares and limits in; whole marks of a tape, nearest to them, out."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate, pairwise

from tagend.cards.propose.tape import Tape
from tagend.cards.propose.wish import Shares
from tagend.cards.recipe.recipe import SECTIONS_MOST, Part

# The next piece of a butt over the one above: within a butt, 60/40 is printed for two pieces
# (flyfishingforum.com, 25 January 2001).
_FALL = Fraction(2, 3)
_LEAST_OF_PLAN = Fraction(9, 10)


@dataclass(frozen=True, slots=True)
class Plan:
    """The lengths of a leader of so many sections, where every spool has enough; in marks."""

    shares: Shares
    parts: tuple[Part, ...]
    least: tuple[int, ...]  # what each spool must give
    lengths: tuple[int, ...]
    total: int


def plan_of(sections: int, shares: Shares, tape: Tape) -> Plan | None:
    """Return the plan of two sections or more; None where they are too many."""
    total, shortest = tape.total, tape.shortest
    if sections > SECTIONS_MOST or sections * shortest > total:
        return None
    counts: dict[Part, int] = {"butt": sections // 2, "taper": (sections - 1) // 2, "tippet": 1}
    parts = tuple(part for part, count in counts.items() for _ in range(count))
    loose = Plan(shares=shares, parts=parts, least=(shortest,) * sections, lengths=(), total=total)
    lengths = fitted(loose, [total] * sections)
    least = tuple(max(shortest, math.ceil(length * _LEAST_OF_PLAN)) for length in lengths)
    return replace(loose, least=least, lengths=lengths)


def fitted(plan: Plan, most: Sequence[int]) -> tuple[int, ...]:
    """Return the lengths nearest to a plan of which none is more than its spool gives.

    Their parts come nearest to their shares, and then the pieces to the fall of their part: the
    sum of squares is the least there is for the parts, and with them for the pieces of each.
    """
    counts = [plan.parts.count(part) for part in dict.fromkeys(plan.parts)]
    spans = [slice(*ends) for ends in pairwise(accumulate(counts, initial=0))]
    wholes = nearest(
        [Fraction(plan.total * share, 100) for share in _percents(plan.shares, counts)],
        [sum(plan.least[span]) for span in spans],
        [min(plan.total, sum(most[span])) for span in spans],
        plan.total,
    )
    lengths: list[int] = []
    for place, (span, count, whole) in enumerate(zip(spans, counts, wholes, strict=True)):
        weights = [(Fraction(1) if place else _FALL) ** at for at in range(count)]
        wanted = [whole * weight / sum(weights) for weight in weights]
        lengths += nearest(wanted, plan.least[span], most[span], whole)
    return tuple(lengths)


def nearest(
    wanted: Sequence[Fraction], least: Sequence[int], most: Sequence[int], total: int
) -> tuple[int, ...]:
    """Return whole numbers of that sum, nearest to those wanted by the sum of squares.

    Each further unit goes where it adds least to the sum, the first of equal places: since the
    squares are convex and the bounds simple, no other choice ends lower.
    """
    found = list(least)
    for _ in range(total - sum(least)):
        open_places = (place for place, number in enumerate(found) if number < most[place])
        found[min(open_places, key=lambda place: found[place] - wanted[place])] += 1
    return tuple(found)


def _percents(shares: Shares, counts: Sequence[int]) -> tuple[int, ...]:
    """Return the share of each part that there is; without a taper the butt has its share too."""
    if len(counts) == 2:
        return shares.butt + shares.taper, shares.tippet
    return shares.butt, shares.taper, shares.tippet
