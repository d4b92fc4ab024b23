"""The knots of one leader: those its recipe names, and the rest chosen by rule, with the reason."""

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from tagend.cards.leader.parts import fly_end_mm, is_level, parts
from tagend.cards.leader.steps import big, step_of
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot, Side, Sides, end_turns, joint_turns
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Meets, Practice
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.cards.recipe.values import BARE

Winds = Literal["above", "below", "both"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Half:
    """One strand in a knot, and the side of the knot that it takes."""

    knot: Knot
    side: Side
    turns: int
    own_mm: Fraction
    other_mm: Fraction
    loop_mm: Fraction  # a usual loop's here
    paired: bool = False  # is the other side of the same knot another strand?

    @property
    def stands_out_mm(self) -> Fraction:
        """How large a loop it ends in, beyond the finished length; 0 for none."""
        loop = self.knot.takes.of(self.side).loop
        return loop * self.loop_mm if isinstance(loop, bool) else loop

    @property
    def winds(self) -> bool:
        """Whether it is wound round a strand, and not folded or wound round only."""
        return self.turns > 0 and self.knot.takes.of(self.side).core > 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """The knot between a section and the next."""

    meeting: Meeting
    knot: Knot
    above: Half  # of a knot that lies between two, each strand in its own
    below: Half
    reason: str | None = None  # why it was chosen; None where the recipe names it
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


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """The knot at the fly line or at the fly; None for a bare end."""

    knot: Knot | None
    meeting: Meeting  # the strand that it is tied in, with itself
    half: Half | None = None  # its strand in the knot; None for a bare end
    reason: str | None = None  # why it was chosen; None where the recipe names it
    own: bool = True  # the recipe or the person's own habit names it

    @property
    def turns(self) -> Sides[int]:
        """The turns of its strand."""
        count = self.half.turns if self.half else 0
        return Sides(count, count)

    @property
    def loop_mm(self) -> Fraction:
        """How large a loop it ends in; 0 for none."""
        return self.half.stands_out_mm if self.half else Fraction(0)


def joints(recipe: Recipe, practice: Practice) -> tuple[Joint, ...]:
    """Return the joint below each section but the last."""
    return tuple(_joint(recipe, place, practice) for place in range(len(recipe.sections) - 1))


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
            _alone(knot if made else _tie(knot, material, mm, practice), mm, loop_mm)
            for material, mm, made in (
                (meeting.upper, meeting.upper_mm, knot.comes_made and bought[0]),
                (meeting.lower, meeting.lower_mm, knot.comes_made and bought[1]),
            )
        )
        return Joint(meeting=meeting, knot=knot, above=above, below=below)
    strands = (meeting.upper_mm, meeting.lower_mm)
    heavy, light = strands if meeting.sides[0] == "heavy" else strands[::-1]
    turns = joint_turns(knot, heavy, light)
    above, below = (
        Half(
            knot=knot,
            side=side,
            turns=turns.of(side),
            own_mm=own,
            other_mm=other,
            loop_mm=practice.knots.joint_loop_mm,
            paired=True,
        )
        for side, own, other in zip(meeting.sides, strands, strands[::-1], strict=True)
    )
    return Joint(meeting=meeting, knot=knot, above=above, below=below)


def butt_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly line; where none is named, a loop that suits the leader."""
    first, level = recipe.sections[0], is_level(recipe)
    material = practice.materials.find(first.material)
    meeting = Meeting.alone(material, first.diameter.mm)
    loop_mm = recipe.butt.loop.mm if recipe.butt.loop else practice.knots.loop_mm
    if recipe.butt.end is None and is_bought(first, material):
        return End(knot=None, meeting=meeting, reason="it is bought with its own")
    if recipe.butt.end is not None:
        named = _named(recipe.butt.end, practice)
        return end_of(named, meeting, loop_mm, practice, bought=is_bought(first, material))
    knot, why, own = _first("butt", meeting, practice, level=level)
    why = "usual on a level leader" if level and knot and not own else why
    return replace(end_of(knot, meeting, loop_mm, practice), reason=why, own=own)


def fly_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly; where none is named, line for a usual knot is kept."""
    last, loop_mm = recipe.sections[-1], practice.knots.fly_loop_mm
    meeting = Meeting.alone(practice.materials.find(last.material), fly_end_mm(last))
    if recipe.fly.knot is not None:
        return end_of(_named(recipe.fly.knot, practice), meeting, loop_mm, practice)
    knot, why, own = _first("fly", meeting, practice)
    return replace(end_of(knot, meeting, loop_mm, practice), reason=why, own=own)


def end_of(
    knot: Knot | None,
    meeting: Meeting,
    loop_mm: Fraction,
    practice: Practice,
    *,
    bought: bool = False,
) -> End:
    """Return an end with the knot that somebody named, its loops of a usual size here."""
    if knot is None:
        return End(knot=None, meeting=meeting)
    is_made = bought and knot.comes_made
    ties = knot.ties and not is_made
    tied = _tie(knot, meeting.upper, meeting.upper_mm, practice) if ties else knot
    return End(knot=knot, meeting=meeting, half=_alone(tied, meeting.upper_mm, loop_mm))


def is_bought(section: Section, material: Material) -> bool:
    """Whether a piece is bought ready made; braided and furled line always is."""
    return section.bought or material.strand == "thread"


def _named(name: str, practice: Practice) -> Knot | None:
    return None if name == BARE else practice.knots.find(name)


def _joint(recipe: Recipe, place: int, practice: Practice) -> Joint:
    upper, lower = recipe.sections[place], recipe.sections[place + 1]
    meeting = Meeting(
        upper=practice.materials.find(upper.material),
        upper_mm=fly_end_mm(upper),
        lower=practice.materials.find(lower.material),
        lower_mm=lower.diameter.mm,
    )
    bought = is_bought(upper, meeting.upper), is_bought(lower, meeting.lower)
    if upper.knot:
        return joint_of(practice.knots.find(upper.knot), meeting, practice, bought=bought)
    is_guard = parts(recipe, practice.materials)[place + 1] == "bite guard"
    meets = _meets(meeting, is_guard, practice)
    knot, why, own = _first(meets, meeting, practice)
    liked = own or knot == practice.choice[meets].usual[0]
    if knot is None:  # nothing of the order can be tied here, which the audit says
        knot = practice.choice["same line"].usual[0]
    joint = joint_of(knot, meeting, practice, bought=bought)
    return replace(joint, reason=why, own=own, liked=liked)


def _meets(meeting: Meeting, is_guard: bool, practice: Practice) -> Meets:
    """Return how two strands meet, as a person says it."""
    if meeting.has_thread:
        return "bought butt"
    if meeting.has_wire:
        return "wire"
    if meeting.mixed:
        return "nylon to fluorocarbon"
    is_shock = is_guard and meeting.step_mm < 0
    if is_shock or big(step_of(meeting), practice.rules["step"].limits):
        return "big step"
    return "same line"


def _first(
    meets: Meets, meeting: Meeting, practice: Practice, *, level: bool = False
) -> tuple[Knot | None, str, bool]:
    """Return a knot for a meeting, why, and whether it is the person's own habit.

    An own habit holds wherever it can be tied; of the usual ones the first that nothing speaks
    against, and where all are spoken against the last that can be tied at all.
    """
    choice = practice.choice[meets]
    for knot in choice.own:
        if untieable(knot, meeting) is None:
            return knot, f"your own choice for {meets}", True
    tied, why = None, choice.why
    for knot in choice.usual:
        against = untieable(knot, meeting)
        if against is None:
            tied = knot
            against = unfit(knot, meeting)
            if level and knot.tapered_only:
                against = "it sits well on a tapered butt only"
        if against is None:
            return knot, why, False
        why = f"not {knot.name}: {against}"
    return tied, "no knot of the order suits", False


def _tie(knot: Knot, material: Material, mm: Fraction, practice: Practice) -> Knot:
    """Return the knot that one side of a ring, a swivel or a loop joint is tied with."""
    alone = Meeting.alone(material, mm)
    ties = [practice.knots.find(name) for name in knot.ties]
    return next((tie for tie in ties if untieable(tie, alone) is None), ties[0])


def _alone(knot: Knot, strand_mm: Fraction, loop_mm: Fraction) -> Half:
    """Return a strand in a knot that it ties with itself."""
    return Half(
        knot=knot,
        side="heavy",
        turns=end_turns(knot, strand_mm).heavy,
        own_mm=strand_mm,
        other_mm=strand_mm,
        loop_mm=loop_mm,
    )
