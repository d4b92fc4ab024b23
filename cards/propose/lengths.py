"""How long each section is: shares and limits in; whole marks of a tape, nearest to them, out."""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import accumulate, pairwise
from typing import NamedTuple

from tagend.cards.propose.tape import Tape
from tagend.cards.propose.wish import Shares
from tagend.cards.recipe.recipe import SECTIONS_MOST, Part

# The next piece of a butt over the one above: within a butt, 60/40 is printed for two pieces
# (flyfishingforum.com, 25 January 2001).
_FALL = Fraction(2, 3)
_LEAST_OF_PLAN = Fraction(9, 10)


class Plan(NamedTuple):
    """The lengths of a leader of so many sections, where every spool has enough; in marks."""

    parts: tuple[Part, ...]
    shares: Shares
    total: int
    lengths: tuple[int, ...]
    least: tuple[int, ...]  # what each spool must give


class Plans(NamedTuple):
    """The plans of one leader for any number of sections."""

    shares: Shares
    tape: Tape

    def of(self, sections: int) -> Plan | None:
        """Return the plan of two sections or more; None where they are too many."""
        total, shortest = self.tape.total, self.tape.shortest
        if sections > SECTIONS_MOST or sections * shortest > total:
            return None
        parts = _parts(sections)
        lengths = share_out(parts, self.shares, total, [shortest] * sections, [total] * sections)
        least = tuple(max(shortest, math.ceil(length * _LEAST_OF_PLAN)) for length in lengths)
        return Plan(parts, self.shares, total, lengths, least)


def fitted(plan: Plan, most: Sequence[int]) -> tuple[int, ...]:
    """Return the lengths nearest to a plan of which none is more than its spool gives."""
    return share_out(plan.parts, plan.shares, plan.total, plan.least, most)


def share_out(
    parts: Sequence[Part], shares: Shares, total: int, least: Sequence[int], most: Sequence[int]
) -> tuple[int, ...]:
    """Return the lengths whose parts come nearest to their shares, and then to their fall.

    The sum of squares is the least there is for the parts, and with them for the pieces of each.
    """
    counts = [parts.count(part) for part in dict.fromkeys(parts)]
    spans = list(pairwise(accumulate(counts, initial=0)))
    wholes = nearest(
        [Fraction(total * share, 100) for share in _shares(shares, counts)],
        [sum(least[start:end]) for start, end in spans],
        [min(total, sum(most[start:end])) for start, end in spans],
        total,
    )
    lengths: list[int] = []
    for place, ((start, end), whole) in enumerate(zip(spans, wholes, strict=True)):
        wanted = [whole * weight for weight in _weights(end - start, falls=place == 0)]
        lengths += nearest(wanted, least[start:end], most[start:end], whole)
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


def _parts(sections: int) -> tuple[Part, ...]:
    counts: dict[Part, int] = {"butt": sections // 2, "taper": (sections - 1) // 2, "tippet": 1}
    return tuple(part for part, count in counts.items() for _ in range(count))


def _shares(shares: Shares, counts: Sequence[int]) -> tuple[int, ...]:
    """Return the share of each part that there is; without a taper the butt has its share too."""
    if len(counts) == 2:
        return shares.butt + shares.taper, shares.tippet
    return shares.butt, shares.taper, shares.tippet


def _weights(count: int, *, falls: bool) -> list[Fraction]:
    weights = [(_FALL if falls else Fraction(1)) ** place for place in range(count)]
    return [weight / sum(weights) for weight in weights]
