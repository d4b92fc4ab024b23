"""A leader worked out in; its recipe with every knot named that the leader is tied with, out."""

from msgspec.structs import replace

from tagend.cards.base.shown_lengths import ShownUnit, length
from tagend.cards.base.units import Length, parse_length
from tagend.cards.leader.joints import End
from tagend.cards.leader.leader import Leader
from tagend.cards.recipe.recipe import Butt, Fly, Recipe

_UNITS: tuple[ShownUnit, ...] = ("in", "cm", "mm")


def all_named(leader: Leader) -> Recipe:
    """Return the recipe with the knots that the rule chose, and the size of a loop at the butt.

    An end stays unnamed that nobody ties: it was bought with its piece, or no knot suits.
    """
    recipe, last = leader.recipe, leader.recipe.sections[-1]
    sections = (
        replace(section, knot=joint.knot.name)
        for section, joint in zip(recipe.sections, leader.joints, strict=False)
    )
    return replace(
        recipe,
        sections=(*sections, last),
        butt=Butt(recipe.butt.end or _name(leader.butt), recipe.butt.loop or _loop(leader)),
        fly=Fly(recipe.fly.knot or _name(leader.fly)),
    )


def _name(end: End) -> str | None:
    return end.knot.name if end.knot else None


def _loop(leader: Leader) -> Length | None:
    """Return the loop that is tied at the butt, in the unit that says it exactly."""
    if not leader.butt.loop_mm or leader.butt.made:
        return None
    spelled = [parse_length(length(leader.butt.loop_mm, unit)) for unit in _UNITS]
    return next((loop for loop in spelled if loop.mm == leader.butt.loop_mm), spelled[-1])
