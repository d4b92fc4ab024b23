"""How big the step at a joint is: the strands that meet in, how far apart they are out.

The audit warns by it and knots are chosen by it, with one limit: a ratio of diameters.
"""

from collections.abc import Iterator
from typing import Literal

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.passing import passing
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.printed_sizes import ROUNDED_MM, step_up_to
from tagend.cards.practice.rules import Limits

# What parts two strands: their diameters, or, of unlike materials, what a wave meets (wave
# impedance) and what bending meets (the fourth root of EI).
By = Literal["thick", "heavy", "stiff"]


class Apart(Struct, frozen=True):
    """How many times as thick the strand above would be, were both of one material."""

    by: By
    low: float
    high: float

    @property
    def falls(self) -> bool:
        """Whether the strand below is surely the lesser one."""
        return self.low > 1

    @property
    def times(self) -> tuple[float, float]:
        """The range as the greater by the lesser: 1.4, 1.6."""
        return (1 / self.high, 1 / self.low) if self.high < 1 else (self.low, self.high)

    @property
    def least(self) -> float:
        """How many times apart they surely are, either way; below 1 where they may be alike."""
        return max(self.low, 1 / self.high)


class Step(Struct, frozen=True):
    """What is known of how far apart two strands are, and what is thick."""

    apart: tuple[Apart, ...]
    thickest_mm: Fraction
    difference_mm: Fraction


def step_of(meeting: Meeting) -> Step:
    """Return the step between two strands.

    What is not known for unlike materials is left out; the diameters stand in for all of it.
    """
    ratio = float(meeting.upper_mm / meeting.lower_mm)
    unlike = () if meeting.upper == meeting.lower else tuple(_unlike(meeting))
    return Step(
        apart=unlike or (Apart("thick", ratio, ratio),),
        thickest_mm=meeting.thickest_mm,
        difference_mm=abs(meeting.step_mm),
    )


def beyond(step: Step, limits: Limits) -> Apart | None:
    """Return what parts two strands beyond the limits of the rule "step", either way.

    That is where the whole range of it is: by weight first, since a wave meets that. The limits are
    a ratio of diameters, and a difference that is small in strands thinner than so; all but for
    what print rounds off.
    """
    ratio, small_mm, fine_mm = limits
    if step.thickest_mm < fine_mm and step_up_to(step.difference_mm, small_mm):
        return None
    most = float(ratio / (1 - ROUNDED_MM / step.thickest_mm))
    for apart in step.apart:
        if apart.least > most:
            return apart
    return None


def big(step: Step, limits: Limits) -> bool:
    """Whether a step is surely beyond the limits, up or down."""
    return beyond(step, limits) is not None


def _unlike(meeting: Meeting) -> Iterator[Apart]:
    """Yield what is known of two materials.

    From r = (Z above - Z below) / (Z above + Z below) the ratio of both is (1 + r) / (1 - r), and
    stiffness goes with the fourth power of the diameter (EI = E x pi x d^4 / 64).
    """
    passed = passing(meeting)
    if passed.reflection:
        low, high = passed.reflection.low, passed.reflection.high
        yield Apart("heavy", (1 + low) / (1 - low), (1 + high) / (1 - high))
    if passed.stiffness:
        yield Apart("stiff", passed.stiffness.low**0.25, passed.stiffness.high**0.25)
