"""Whether a knot suits two strands: a knot and where strands meet in, the reason against it out."""

from fractions import Fraction
from typing import NamedTuple

from tagend.cards.base.shown_lengths import inches
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.practice.knots import PRINTED_MM, ROUNDED_MM, Knot
from tagend.cards.practice.materials import Material


class Meeting(NamedTuple):
    """Two strands that one knot joins."""

    upper: Material  # towards the butt
    upper_mm: Fraction
    lower: Material
    lower_mm: Fraction

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
    if most is not None and (step := abs(meeting.step_mm)) > most + PRINTED_MM:
        return f"it takes a step up to {inches(most)}, and this is {inches(step)}"
    if thickest is not None and (strand := meeting.thickest_mm) > thickest + ROUNDED_MM:
        return f"it draws up on strands up to {inches(thickest)}, and this is {inches(strand)}"
    return None


def disputed(knot: Knot, meeting: Meeting) -> bool:
    """Whether print disagrees: some tie it where hard nylon meets fluorocarbon of like size."""
    hard = all(
        material.hard for material in (meeting.upper, meeting.lower) if material.kind == "nylon"
    )
    like_size = abs(meeting.step_mm) <= DIAMETER_MM["thou"] + PRINTED_MM
    return meeting.mixed and knot.mixed == "hard nylon" and hard and like_size
