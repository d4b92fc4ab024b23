"""Strands joined by knots: a knot and where strands meet in, each strand in its knot out."""

from typing import Literal

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.said import Said
from tagend.cards.leader.suitability import Meeting, untieable
from tagend.cards.practice.knots import Knot, Side, Sides, end_turns, joint_turns
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Practice

Winds = Literal["above", "below", "both"]


class Half(Struct, frozen=True, kw_only=True):
    """One strand in a knot, and the side of the knot that it takes."""

    knot: Knot
    side: Side
    turns: int
    own_mm: Fraction
    other_mm: Fraction
    loop_mm: Fraction  # a usual loop's here
    made: bool = False  # was it bought with its piece? then nothing is tied here

    def __hash__(self) -> int:
        """Return that of three integers: a fraction's takes as long as half of an allowance."""
        return hash((self.turns, self.own_mm.numerator, self.other_mm.numerator))

    @property
    def stands_out_mm(self) -> Fraction:
        """How large a loop it ends in, beyond the finished length; 0 for none."""
        loop = self.knot.takes.of(self.side).loop
        return loop * self.loop_mm if isinstance(loop, bool) else loop

    @property
    def winds(self) -> bool:
        """Whether it is wound round a strand, and not folded or wound round only."""
        return self.turns > 0 and self.knot.takes.of(self.side).core > 0


class Joint(Struct, frozen=True, kw_only=True):
    """The knot between a section and the next."""

    meeting: Meeting
    knot: Knot
    above: Half  # of a knot that lies between two, each strand in its own
    below: Half
    reason: Said | None = None  # why it was chosen; None where the recipe names it
    own: bool = True  # the recipe or the person's own habit names it
    liked: bool = True  # so it does, or it is the first choice for how the strands meet

    @property
    def sides(self) -> tuple[Side, Side]:
        """The side of the strand above and of the one below."""
        return self.meeting.sides

    @property
    def turns(self) -> Sides[int]:
        """The turns of the heavy strand and of the light one."""
        counts = self.above.turns, self.below.turns
        return Sides(*counts if self.sides[0] == "heavy" else reversed(counts))

    @property
    def winds(self) -> Winds | None:
        """Which strand winds; None in a knot without turns."""
        if self.above.winds and self.below.winds:
            return "both"
        if self.above.winds:
            return "above"
        return "below" if self.below.winds else None


class End(Struct, frozen=True, kw_only=True):
    """The knot at the fly line or at the fly; None for a bare end."""

    knot: Knot | None
    meeting: Meeting  # the strand that it is tied in, with itself
    half: Half | None = None  # its strand in the knot; None for a bare end
    reason: Said | None = None  # why it was chosen; None where the recipe names it
    own: bool = True  # the recipe or the person's own habit names it

    @property
    def made(self) -> bool:
        """Whether it was bought with its piece, so that nothing is tied here."""
        return self.half is not None and self.half.made

    @property
    def turns(self) -> Sides[int]:
        """The turns of its strand."""
        count = self.half.turns if self.half else 0
        return Sides(count, count)

    @property
    def loop_mm(self) -> Fraction:
        """How large a loop it ends in; 0 for none."""
        return self.half.stands_out_mm if self.half else Fraction(0)


def joint_of(
    knot: Knot,
    meeting: Meeting,
    practice: Practice,
    *,
    bought: tuple[bool, bool] = (False, False),
) -> Joint:
    """Return two strands, which may be bought ready made, joined by a knot that somebody named.

    What brings its own side of a knot that lies between two ties nothing.
    """
    if knot.ties:
        loop_mm = practice.knots.fly_loop_mm if knot.apart else practice.knots.joint_loop_mm
        above, below = (
            _alone(knot if made else _tie(knot, material, mm, practice), mm, loop_mm, made)
            for material, mm, made in (
                (meeting.upper, meeting.upper_mm, knot.comes_made and bought[0]),
                (meeting.lower, meeting.lower_mm, knot.comes_made and bought[1]),
            )
        )
        return Joint(meeting=meeting, knot=knot, above=above, below=below)
    upper_mm, lower_mm, (upper, lower) = meeting.upper_mm, meeting.lower_mm, meeting.sides
    heavy_mm, light_mm = (upper_mm, lower_mm) if upper == "heavy" else (lower_mm, upper_mm)
    turns = joint_turns(knot, heavy_mm, light_mm)

    def half(side: Side, own_mm: Fraction, other_mm: Fraction) -> Half:
        return Half(
            knot=knot,
            side=side,
            turns=turns.of(side),
            own_mm=own_mm,
            other_mm=other_mm,
            loop_mm=practice.knots.joint_loop_mm,
        )

    above, below = half(upper, upper_mm, lower_mm), half(lower, lower_mm, upper_mm)
    return Joint(meeting=meeting, knot=knot, above=above, below=below)


def end_of(
    knot: Knot | None,
    meeting: Meeting,
    loop_mm: Fraction,
    practice: Practice,
    *,
    bought: bool = False,
) -> End:
    """Return an end with the knot that somebody named, its loops of a usual size here.

    A loop that is named of a bought piece is its own; braid and furled line has none that is tied.
    """
    if knot is None:
        return End(knot=None, meeting=meeting)
    is_made = bought and (knot.comes_made or ("butt" in knot.places and not meeting.has_thread))
    ties = knot.ties and not is_made
    tied = _tie(knot, meeting.upper, meeting.upper_mm, practice) if ties else knot
    half = _alone(tied, meeting.upper_mm, loop_mm, is_made)
    return End(knot=knot, meeting=meeting, half=half)


def _tie(knot: Knot, material: Material, mm: Fraction, practice: Practice) -> Knot:
    """Return the knot that one side of a ring, a swivel or a loop joint is tied with."""
    alone = Meeting.alone(material, mm)
    ties = [practice.knots.find(name) for name in knot.ties]
    return next((tie for tie in ties if untieable(tie, alone) is None), ties[0])


def _alone(knot: Knot, strand_mm: Fraction, loop_mm: Fraction, made: bool) -> Half:
    """Return a strand in a knot that it ties with itself."""
    return Half(
        knot=knot,
        side="heavy",
        turns=end_turns(knot, strand_mm).heavy,
        own_mm=strand_mm,
        other_mm=strand_mm,
        loop_mm=loop_mm,
        made=made,
    )
