"""The knots of one leader: those its recipe names, and the rest chosen by rule, with the reason."""

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple

from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot, turns
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe


class Joint(NamedTuple):
    """The knot between a section and the next."""

    meeting: Meeting
    knot: Knot
    reason: str | None  # why the rule chose it; None where the recipe names it

    @property
    def turns(self) -> tuple[int, int]:
        """The turns on the thick side and on the thin one."""
        thin, thick = sorted((self.meeting.upper_mm, self.meeting.lower_mm))
        return turns(self.knot, thick, thin, "thick"), turns(self.knot, thin, thick, "thin")


class End(NamedTuple):
    """The knot at the fly line or at the fly; None for a bare end."""

    knot: Knot | None
    loop_mm: Fraction
    reason: str | None


def joints(recipe: Recipe, practice: Practice) -> tuple[Joint, ...]:
    """Return the joint below each section but the last."""
    return tuple(_joint(recipe, place, practice) for place in range(len(recipe.sections) - 1))


def butt_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly line; where none is named, a loop that suits the leader."""
    if recipe.butt.end == "none":
        return End(None, Fraction(0), None)
    loop = recipe.butt.loop.mm if recipe.butt.loop else practice.knots.loop_mm
    if recipe.butt.end:
        return End(practice.knots.find(recipe.butt.end), loop, None)
    first, level = recipe.sections[0], is_level(recipe)
    knot = _first_that_holds(
        (knot for knot in practice.choice["butt"] if not (level and knot.tapered_only)),
        practice.materials.find(first.material),
        first.diameter.mm,
    )
    if knot is None:
        return _NOTHING_HOLDS
    return End(knot, loop, f"usual on a {'level leader' if level else 'tapered butt'}")


def fly_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly; where none is named, line for a usual knot is kept."""
    if recipe.fly.knot == "none":
        return End(None, Fraction(0), None)
    loop = practice.knots.fly_loop_mm
    if recipe.fly.knot:
        return End(practice.knots.find(recipe.fly.knot), loop, None)
    last = recipe.sections[-1]
    material = practice.materials.find(last.material)
    knot = _first_that_holds(practice.choice["fly"], material, fly_end_mm(last))
    if knot is None:
        return _NOTHING_HOLDS
    return End(knot, loop, "none is named, so line for this one is kept")


_NOTHING_HOLDS = End(None, Fraction(0), "no knot of the order holds here")


def _first_that_holds(
    order: Iterable[Knot], material: Material, diameter_mm: Fraction
) -> Knot | None:
    wire = material.kind == "wire"
    return next((knot for knot in order if knot.takes_strand(diameter_mm, wire=wire)), None)


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
