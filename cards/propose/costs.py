"""What speaks against a step of a taper: a net of strands in, the cost of each step out."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from tagend.cards.leader.passing import passing
from tagend.cards.leader.steps import beyond, step_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.propose.links import changes
from tagend.cards.propose.net import Net, Places, Step
from tagend.cards.propose.supplies import Supply

_FINENESS = 1_000_000  # logarithms are counted in millionths, so that costs are whole numbers


@dataclass(frozen=True, slots=True, order=True, kw_only=True)
class Cost:
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


def step_costs(net: Net, known: dict[tuple[Step, bool], Cost] | None = None) -> dict[Places, Cost]:
    """Return the cost of each step; a start costs the step from a bought butt, or nothing.

    `known` are costs in other nets of the wish, to which those of this one are added.
    """
    known = {} if known is None else known
    links, strands, bought = net.links, net.strands, net.links.bought
    chains: dict[Places, list[Supply]] = {
        (upper, lower): links.chain(strands[upper], strands[lower], lower in net.ends)
        for upper, row in enumerate(net.below)
        for lower in row
    }
    for start in net.starts:
        strand = strands[start]
        chain = links.chain(bought, strand, start in net.ends) if bought else [strand]
        chains[None, start] = chain
    costs: dict[Places, Cost] = {}
    for places, chain in chains.items():
        step = tuple(chain), places[1] in net.ends
        if step not in known:
            known[step] = _cost(net, *step)
        costs[places] = known[step]
    return costs


def _cost(net: Net, chain: Sequence[Supply], at_tippet: bool) -> Cost:
    joints = net.links.joints(chain)
    steps = (beyond(step_of(joint.meeting), net.wish.step.limits) for joint in joints)
    return Cost(
        worst=max((_log(apart.least) for apart in steps if apart), default=0),
        changes=int(changes(chain) and not at_tippet),
        knots=len(joints),
        others=sum(not joint.liked for joint in joints),
        uneven=sum(_uneven(joint.meeting) for joint in joints),
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
