"""What a joint passes on of a small wave: the strands that meet in, what passes and turns back out.

Computed for an ideal string, as `waves` says, and of use below a leader, which is made by it.
"""

import math
from typing import NamedTuple

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.materials import Range

_SAME: Range = (Fraction(1), Fraction(1))


class Spread(Struct, frozen=True):
    """A figure that is known to lie from `low` to `high`; mostly both are the same."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        return (self.low + self.high) / 2


class Passing(Struct, frozen=True, kw_only=True):
    """What becomes of a small wave that comes down to where two strands meet."""

    reflection: Spread | None  # of amplitude; above 0 where the lower strand is the lighter string
    passed: Spread | None  # share of energy; both are None where a density is not known
    stiffness: Spread | None  # EI above by EI below; None where a modulus is needed and not known


class Percent(NamedTuple):
    """A share in whole percent, least and most."""

    least: int
    most: int

    def __str__(self) -> str:
        return " to ".join(dict.fromkeys(map(str, self))) + " %"

    @classmethod
    def of(cls, share: Spread) -> "Percent":
        return cls(round(100 * share.low), round(100 * share.high))


def turned_back(joint: Passing) -> Spread | None:
    """Return the share of a wave's amplitude that turns back; None where a density is not known.

    It is the same whichever of the two strands is above.
    """
    return joint.reflection and _either_way(joint.reflection)


def _either_way(reflection: Spread) -> Spread:
    """Return what is reflected without its sign."""
    low, high = reflection.low, reflection.high
    return Spread(max(low, -high, 0.0), max(-low, high))


def passing(meeting: Meeting) -> Passing:
    """Return what the joint of two strands passes on.

    Of one material, density and modulus are the same on both sides, whatever they are.
    """
    upper, lower = meeting.upper, meeting.lower
    density = quotient(upper.density, lower.density)
    modulus = quotient(upper.modulus, lower.modulus)
    if upper == lower:
        density, modulus = density and _SAME, _SAME
    return passing_by(meeting.upper_mm / meeting.lower_mm, density, modulus)


def passing_by(diameter: Fraction, density: Range | None, modulus: Range | None) -> Passing:
    """Return what passes where diameter, density and modulus above are so many times those below.

    Z = sqrt(T mu) with mu = density x pi d^2 / 4, so k = Z above / Z below is the ratio of
    d sqrt(density). Reflected is r = (k - 1) / (k + 1), which grows with k; passed, 1 - r^2.
    EI = E x pi d^4 / 64.
    """
    stiffness = modulus and Spread(*(float(times * diameter**4) for times in modulus))
    if density is None:
        return Passing(reflection=None, passed=None, stiffness=stiffness)
    ratios = (float(diameter) * math.sqrt(times) for times in density)
    reflection = Spread(*((k - 1) / (k + 1) for k in ratios))
    turned = _either_way(reflection)
    passed = Spread(1 - turned.high**2, 1 - turned.low**2)
    return Passing(reflection=reflection, passed=passed, stiffness=stiffness)


def quotient(upper: Range | None, lower: Range | None) -> Range | None:
    """Return the least and the most that one figure may be of another."""
    return (upper[0] / lower[1], upper[1] / lower[0]) if upper and lower else None
