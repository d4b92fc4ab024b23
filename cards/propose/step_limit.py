"""How big a step may be: where strands meet in, whether they may follow each other out."""

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.leader.steps import big, step_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.rules import Limits
from tagend.cards.recipe.recipe import SECTIONS_MOST


class StepLimit(Struct, frozen=True):
    """The limit of the rule "step", or what a person writes instead."""

    limits: Limits
    most_mm: Fraction | None = None

    def allows(self, meeting: Meeting) -> bool:
        """Whether the step between two strands, up or down, is no bigger than the limit."""
        if self.most_mm is not None:
            return abs(meeting.step_mm) <= self.most_mm
        return not big(step_of(meeting), self.limits)

    def knots(self, thick_mm: Fraction, thin_mm: Fraction) -> int:
        """Return the fewest steps that are within both the rule and what a person writes."""
        ratio, whole = self.limits[0], thick_mm / thin_mm
        enough = (knots for knots in range(1, SECTIONS_MOST) if ratio**knots >= whole)
        own = -(-(thick_mm - thin_mm) // self.most_mm) if self.most_mm else 1
        return max(own, next(enough, SECTIONS_MOST))

    def between(self, thick_mm: Fraction, thin_mm: Fraction, steps: int) -> list[Fraction]:
        """Return the diameters between two at so many steps that are alike."""
        parts = [Fraction(place, steps) for place in range(1, steps)]
        if self.most_mm is not None:
            return [thick_mm - (thick_mm - thin_mm) * part for part in parts]
        return [thick_mm * Fraction(float(thin_mm / thick_mm) ** float(part)) for part in parts]

    def told(self, unit: ShownUnit) -> str:
        """Return the limit in words."""
        if self.most_mm is None:
            return f"{float(self.limits[0])} times or less"
        return f"{thickness(self.most_mm, unit)} or less"
