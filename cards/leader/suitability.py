"""Whether a knot suits two strands: a knot and where strands meet in, the reason against it out."""

from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.base.shown_lengths import inches as inches
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.materials import Material
from tagend.cards.practice.printed_sizes import step_up_to


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two strands that one knot joins."""

    upper: Material  # towards the butt
    upper_mm: Fraction
    lower: Material
    lower_mm: Fraction

    @classmethod
    def alone(cls, strand: Material, mm: Fraction) -> "Meeting":
        """Return a strand as a knot at an end meets it: with itself."""
        return cls(upper=strand, upper_mm=mm, lower=strand, lower_mm=mm)

    @property
    def step_mm(self) -> Fraction:
        """How much thinner the lower strand is; negative where it is thicker."""
        return self.upper_mm - self.lower_mm

    @property
    def thickest_mm(self) -> Fraction:
        return max(self.upper_mm, self.lower_mm)

    @property
    def mixed(self) -> bool:
        """Whether nylon meets fluorocarbon."""
        return {self.upper.kind, self.lower.kind} == {"nylon", "fluorocarbon"}

    @property
    def wire(self) -> bool:
        return "wire" in (self.upper.kind, self.lower.kind)


def untieable(knot: Knot, meeting: Meeting) -> str | None:
    """Return why the knot cannot join these strands at all, or None where it can."""
    if meeting.wire and not knot.wire:
        return "it does not hold on wire"
    if knot.wire_only and not meeting.wire:
        return "it is for wire alone"
    return None


def unfit(knot: Knot, meeting: Meeting) -> str | None:
    """Return what practice says against this knot here, or None where it says nothing."""
    if meeting.mixed and knot.mixed != "yes":
        return (
            "between nylon, which takes up water and swells, and fluorocarbon, which does not, "
            "it works loose"
        )
    most, thickest = knot.largest_step_mm, knot.thickest_mm
    step, strand = abs(meeting.step_mm), meeting.thickest_mm
    if most is not None and not step_up_to(step, most):
        return f"it takes a step up to {inches(most)}, and this is {inches(step)}"
    if thickest is not None and not knot.draws_up_on(strand):
        return f"it draws up on strands up to {inches(thickest)}, and this is {inches(strand)}"
    return None


_LIKE_SIZE_MM = DIAMETER_MM["thou"]  # a step that is none


def disputed(knot: Knot, meeting: Meeting) -> bool:
    """Whether print disagrees: some tie it where hard nylon meets fluorocarbon of like size."""
    hard = all(
        material.hard for material in (meeting.upper, meeting.lower) if material.kind == "nylon"
    )
    like_size = step_up_to(abs(meeting.step_mm), _LIKE_SIZE_MM)
    return meeting.mixed and knot.mixed == "hard nylon" and hard and like_size
