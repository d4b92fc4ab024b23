"""How big the step at a joint is: the strands that meet in, their ratio and whether it is big out.

The audit warns by it and knots are chosen by it, with one limit.
"""

from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.materials import Material
from tagend.cards.practice.printed_sizes import ROUNDED_MM, step_up_to
from tagend.cards.practice.rules import Limits

_SAME = (Fraction(1), Fraction(1))


@dataclass(frozen=True, slots=True)
class Step:
    """How many times as stiff in bending the upper strand is, least and most, and what is thick.

    Of one material that is the ratio of diameters to the fourth power, and so it is taken where a
    modulus is not known.
    """

    least: Fraction
    most: Fraction
    thickest_mm: Fraction
    difference_mm: Fraction

    @property
    def falls(self) -> bool:
        """Whether the lower strand is the limper one, whatever its modulus may be."""
        return self.least > 1

    @property
    def times(self) -> tuple[float, float]:
        """The same as a ratio of one material's diameters, the bigger by the smaller: 1.4, 1.6."""
        low, high = (float(ratio) ** 0.25 for ratio in (self.least, self.most))
        return (1 / high, 1 / low) if self.most < 1 else (low, high)


def step_of(meeting: Meeting) -> Step:
    """Return the step between two strands.

    EI = E x pi x d^4 / 64, a solid round strand in any mechanics of materials text.
    """
    power = (meeting.upper_mm / meeting.lower_mm) ** 4
    least, most = _moduli(meeting.upper, meeting.lower)
    return Step(
        least=power * least,
        most=power * most,
        thickest_mm=meeting.thickest_mm,
        difference_mm=abs(meeting.step_mm),
    )


def big(step: Step, limits: Limits) -> bool:
    """Whether a step either way is beyond the limits of the rule "step", whatever the moduli are.

    The limits are a ratio of diameters, and a difference that is small in strands thinner than so;
    all but for what print rounds off.
    """
    ratio, small_mm, fine_mm = limits
    small = step.thickest_mm < fine_mm and step_up_to(step.difference_mm, small_mm)
    most = (ratio / (1 - ROUNDED_MM / step.thickest_mm)) ** 4
    beyond = step.least > most or step.most < 1 / most
    return beyond and not small


def _moduli(upper: Material, lower: Material) -> tuple[Fraction, Fraction]:
    """Return the least and the most that the modulus above may be of the one below."""
    if upper == lower or upper.modulus is None or lower.modulus is None:
        return _SAME
    (low, high), (low_below, high_below) = upper.modulus, lower.modulus
    return low / high_below, high / low_below
