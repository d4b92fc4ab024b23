"""What speaks against a step of a taper: a net of strands in, the cost of each step out."""

import math
from collections.abc import Callable
from functools import cache
from itertools import pairwise

from msgspec import Struct

from tagend.cards.leader.choosing import choice_for
from tagend.cards.leader.passing import passing
from tagend.cards.leader.steps import beyond, step_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.propose.net import Net
from tagend.cards.propose.supplies import Supply, meeting_of, once

_FINENESS = 1_000_000  # logarithms are counted in millionths, so that costs are whole numbers


class Cost(Struct, frozen=True, order=True, kw_only=True):
    """What speaks against a taper, the gravest first."""

    worst: int = 0  # the logarithm of how far apart the worst joint is; 0 where none is too far
    changes: int = 0  # of material above the tippet: practice in print stays in one kind until it
    knots: int = 0
    others: int = 0  # joints with neither a knot of the person's habit nor the first choice
    # Of the steps: the logarithm of the energy left below all joints, without its sign, which is
    # least where all turn back alike. How soon a leader turns over does not go with it: so another
    # model finds (tests/bench/unroll.py).
    uneven: int = 0

    @property
    def sums(self) -> tuple[int, ...]:
        """All that adds up along a taper; of the worst joint only the worst counts."""
        return self.changes, self.knots, self.others, self.uneven

    def __add__(self, other: "Cost") -> "Cost":
        return Cost(
            worst=max(self.worst, other.worst),
            changes=self.changes + other.changes,
            knots=self.knots + other.knots,
            others=self.others + other.others,
            uneven=self.uneven + other.uneven,
        )


StepCosts = Callable[[int | None, int], Cost]  # of a strand below another, by their places


def step_costs(net: Net) -> StepCosts:
    """Return what each step costs; a start costs the step from a bought butt, or nothing."""
    by_pair = once(lambda upper, lower: _cost(net, upper, lower))

    @cache
    def cost(above: int | None, below: int) -> Cost:
        chain = net.chain(above, below)
        changes = below < net.body and chain[0].material != chain[-1].material
        joints = (by_pair(*pair) for pair in pairwise(chain))
        return sum(joints, start=Cost(changes=int(changes)))

    return cost


def _cost(net: Net, upper: Supply, lower: Supply) -> Cost:
    practice = net.links.practice
    meeting = meeting_of(upper, lower, practice)
    apart = beyond(step_of(meeting), net.wish.step.limits)
    return Cost(
        worst=_log(apart.least) if apart else 0,
        knots=1,
        others=int(not choice_for(meeting, practice).liked),
        uneven=_uneven(meeting),
    )


def _uneven(meeting: Meeting) -> int:
    """Return what turns back, by the diameters where a density is not known."""
    passed = passing(meeting).passed
    if passed is not None:
        return -_log((passed.low + passed.high) / 2)
    above, below = float(meeting.upper_mm), float(meeting.lower_mm)
    return -_log(1 - ((above - below) / (above + below)) ** 2)


def _log(number: float) -> int:
    return round(_FINENESS * math.log(number))
