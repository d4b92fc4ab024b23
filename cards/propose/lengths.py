"""How long each section is: shares and limits in; whole marks of a tape, nearest to them, out."""

import math
from collections.abc import Sequence
from itertools import accumulate, pairwise

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.propose.tape import Tape
from tagend.cards.propose.wish import Shares
from tagend.cards.recipe.recipe import SECTIONS_MOST, Part

# The next piece of a butt over the one above: within a butt, 60/40 is printed for two pieces
# (flyfishingforum.com, 25 January 2001).
_FALL = Fraction(2, 3)
_LEAST_OF_PLAN = Fraction(9, 10)


class Plan(Struct, frozen=True):
    """The lengths of a leader of so many sections, where every spool has enough; in marks."""

    shares: Shares
    parts: tuple[Part, ...]
    least: tuple[int, ...]  # what each spool must give
    lengths: tuple[int, ...]
    total: int


def plan_of(sections: int, shares: Shares, tape: Tape, bought: bool = False) -> Plan | None:
    """Return the plan of a taper; None where its sections are too many.

    Below a bought butt all but the tippet is taper, which shares what is left with it.
    """
    total, shortest = tape.total, tape.shortest
    if sections > SECTIONS_MOST or sections * shortest > total:
        return None
    butt = 0 if bought else sections // 2
    counts: dict[Part, int] = {"butt": butt, "taper": sections - 1 - butt, "tippet": 1}
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
    spans = _spans(plan)
    wholes = nearest(
        [plan.total * share for share in _portions(plan)],
        [sum(plan.least[span]) for span in spans],
        [min(plan.total, sum(most[span])) for span in spans],
        plan.total,
    )
    lengths: list[int] = []
    for span, whole in zip(spans, wholes, strict=True):
        wanted = _falling(plan.parts[span], whole)
        lengths += nearest(wanted, plan.least[span], most[span], whole)
    return tuple(lengths)


def in_halves(
    plan: Plan, lengths: Sequence[int], most: Sequence[int], foot: int
) -> tuple[Fraction, ...]:
    """Return the lengths with each part of pieces up to a foot shared in half marks.

    Hands use those below a foot. Such a part keeps its length, and comes nearer to its fall.
    """
    found: list[Fraction] = []
    for span in _spans(plan):
        whole = list(lengths[span])
        halves = [2 * length for length in whole]
        if max(whole) <= foot:
            wanted = _falling(plan.parts[span], 2 * sum(whole))
            least = [2 * marks for marks in plan.least[span]]
            limits = [2 * min(marks, foot) for marks in most[span]]
            halves = list(nearest(wanted, least, limits, 2 * sum(whole)))
        found += [Fraction(length, 2) for length in halves]
    return tuple(found)


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


def _spans(plan: Plan) -> list[slice]:
    """Return where each part stands."""
    counts = [plan.parts.count(part) for part in dict.fromkeys(plan.parts)]
    return [slice(*ends) for ends in pairwise(accumulate(counts, initial=0))]


def _portions(plan: Plan) -> list[Fraction]:
    """Return the portion of each part that there is.

    Without a taper the butt has its share too; without a butt the others share all there is.
    """
    shares, there = plan.shares, dict.fromkeys(plan.parts)
    percents: dict[Part, int] = {
        "butt": shares.butt + (0 if "taper" in there else shares.taper),
        "taper": shares.taper,
        "tippet": shares.tippet,
    }
    whole = sum(percents[part] for part in there)
    return [Fraction(percents[part], whole) for part in there]


def _falling(parts: Sequence[Part], whole: int) -> list[Fraction]:
    """Return what the pieces of a part should have of it: those of a butt fall."""
    fall = _FALL if parts[0] == "butt" else Fraction(1)
    weights = [fall**at for at in range(len(parts))]
    return [whole * weight / sum(weights) for weight in weights]
