"""The knots of one leader: those its recipe names, and the rest chosen by rule, with the reason."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot, Side, Sides, end_turns, joint_turns
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.values import BARE


@dataclass(frozen=True, slots=True)
class Joint:
    """The knot between a section and the next."""

    meeting: Meeting
    knot: Knot
    reason: str | None  # why the rule chose it; None where the recipe names it

    @property
    def sides(self) -> tuple[Side, Side]:
        """The side of the strand above and of the one below; of like strands the upper is thick."""
        if self.meeting.upper_mm >= self.meeting.lower_mm:
            return "heavy", "light"
        return "light", "heavy"

    @property
    def turns(self) -> Sides[int]:
        """The turns of the thick strand and of the thin one."""
        thin, thick = sorted((self.meeting.upper_mm, self.meeting.lower_mm))
        return joint_turns(self.knot, thick, thin)


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """The knot at the fly line or at the fly; None for a bare end."""

    knot: Knot | None
    meeting: Meeting  # the strand that it is tied in, with itself
    loop_mm: Fraction = Fraction(0)
    reason: str | None = None  # why the rule chose it; None where the recipe names it

    @property
    def turns(self) -> Sides[int]:
        """The turns of its strand."""
        return Sides(0, 0) if self.knot is None else end_turns(self.knot, self.meeting.upper_mm)


def joints(recipe: Recipe, practice: Practice) -> tuple[Joint, ...]:
    """Return the joint below each section but the last."""
    return tuple(_joint(recipe, place, practice) for place in range(len(recipe.sections) - 1))


def butt_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly line; where none is named, a loop that suits the leader."""
    first, level = recipe.sections[0], is_level(recipe)
    bare = End(
        knot=None,
        meeting=Meeting.alone(practice.materials.find(first.material), first.diameter.mm),
        loop_mm=recipe.butt.loop.mm if recipe.butt.loop else practice.knots.loop_mm,
        reason=f"usual on a {'level leader' if level else 'tapered butt'}",
    )
    order = (knot for knot in practice.choice["butt"] if not (level and knot.tapered_only))
    return _tied(bare, recipe.butt.end, order, practice)


def fly_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly; where none is named, line for a usual knot is kept."""
    last = recipe.sections[-1]
    bare = End(
        knot=None,
        meeting=Meeting.alone(practice.materials.find(last.material), fly_end_mm(last)),
        loop_mm=practice.knots.fly_loop_mm,
        reason="none is named, so line for this one is kept",
    )
    return _tied(bare, recipe.fly.knot, practice.choice["fly"], practice)


def _tied(bare: End, name: str | None, order: Iterable[Knot], practice: Practice) -> End:
    """Return the end with the knot that is named, or with the first of an order that holds."""
    if name is not None:
        return replace(bare, knot=None if name == BARE else practice.knots.find(name), reason=None)
    for knot in order:
        if untieable(knot, bare.meeting) is None and knot.draws_up_on(bare.meeting.upper_mm):
            return replace(bare, knot=knot)
    return replace(bare, reason="no knot of the order holds here")


def _joint(recipe: Recipe, place: int, practice: Practice) -> Joint:
    upper, lower = recipe.sections[place], recipe.sections[place + 1]
    meeting = Meeting(
        upper=practice.materials.find(upper.material),
        upper_mm=fly_end_mm(upper),
        lower=practice.materials.find(lower.material),
        lower_mm=lower.diameter.mm,
    )
    if upper.knot:
        return Joint(meeting, practice.knots.find(upper.knot), None)
    return _chosen(meeting, practice)


def _chosen(meeting: Meeting, practice: Practice) -> Joint:
    """Take the first knot of the practice's order that nothing speaks against."""
    reason = "one kind of line and a small step"
    for knot in practice.choice["joint"]:
        against = untieable(knot, meeting) or unfit(knot, meeting)
        if against is None:
            return Joint(meeting, knot, reason)
        reason = f"not {knot.name}: {against}"
    return Joint(meeting, practice.choice["joint"][-1], "no knot of the order suits")
