"""Whether a knot suits two strands: a knot and where strands meet in, the reason against it out."""

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.leader.said import Said, said
from tagend.cards.practice.knots import Knot, Side
from tagend.cards.practice.materials import Material, Strand
from tagend.cards.practice.printed_sizes import step_up_to


class Meeting(Struct, frozen=True):
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
    def ratio(self) -> Fraction:
        """How many times as thick the thicker strand is."""
        return self.thickest_mm / min(self.upper_mm, self.lower_mm)

    @property
    def sides(self) -> tuple[Side, Side]:
        """The side that the strand above takes of a knot, and the one below.

        Wire does not wind, so it is the heavy side however thin it is; else the thicker strand
        is, and of like ones the upper.
        """
        above = (self.upper.is_wire, self.upper_mm)
        return ("heavy", "light") if above >= self._below else ("light", "heavy")

    @property
    def mixed(self) -> bool:
        """Whether nylon meets fluorocarbon."""
        return self.upper.kind != self.lower.kind and self.upper.drawn and self.lower.drawn

    @property
    def has_wire(self) -> bool:
        return self.upper.is_wire or self.lower.is_wire

    @property
    def has_thread(self) -> bool:
        return "thread" in (self.upper.strand, self.lower.strand)

    @property
    def _below(self) -> tuple[bool, Fraction]:
        return self.lower.is_wire, self.lower_mm


_NOT_ON: dict[Strand, Said] = {
    "line": said("for_wire_alone"),
    "wire": said("not_on_wire"),
    "stranded wire": said("not_on_stranded_wire"),
    "thread": said("not_on_thread"),
}


def untieable(knot: Knot, meeting: Meeting) -> Said | None:
    """Return why the knot cannot join these strands at all, or None where it can."""
    for material in (meeting.upper, meeting.lower):
        if material.strand not in knot.on:
            return _NOT_ON[material.strand]
    if "joint" in knot.places and not knot.ties and meeting.upper.is_wire and meeting.lower.is_wire:
        return said("wire_to_wire")
    return None


def unfit(knot: Knot, meeting: Meeting) -> Said | None:
    """Return what practice says against this knot here, or None where it says nothing.

    Nothing of the step itself, which is judged alike for every knot.
    """
    if meeting.mixed and knot.mixed != "yes":
        return said("draw_up_unlike")
    most = knot.largest_ratio
    if most is not None and not knot.apart and meeting.ratio > most:
        return said("too_unlike", most=most, ratio=meeting.ratio)
    if knot.thickest_mm is not None and not knot.draws_up_on(meeting.thickest_mm):
        return said("too_thick", most=knot.thickest_mm, strand=meeting.thickest_mm)
    return None


_LIKE_SIZE_MM = DIAMETER_MM["thou"]  # a step that is none


def disputed(knot: Knot, meeting: Meeting) -> bool:
    """Whether print disagrees: some tie it where hard nylon meets fluorocarbon of like size."""
    hard = all(
        material.hard for material in (meeting.upper, meeting.lower) if material.kind == "nylon"
    )
    like_size = step_up_to(abs(meeting.step_mm), _LIKE_SIZE_MM)
    return meeting.mixed and knot.mixed == "hard nylon" and hard and like_size
