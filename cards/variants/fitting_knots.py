"""The named knots of a changed leader: a recipe and the one it was in; those that suit, out."""

from dataclasses import replace
from fractions import Fraction

from tagend.cards.leader.joints import joints
from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe


def with_fitting_knots(recipe: Recipe, before: Recipe, practice: Practice) -> Recipe:
    """Return the recipe without the names of knots that do not suit its new strands.

    Where a knot meets strands as before, it stays: its recipe chose it for them.
    """
    known = {(joint.knot.name, joint.meeting) for joint in joints(before, practice)}
    above = (
        section
        if (joint.knot.name, joint.meeting) in known or _suits(joint.knot, joint.meeting)
        else replace(section, knot=None)
        for section, joint in zip(recipe.sections, joints(recipe, practice), strict=False)
    )
    fitting = replace(recipe, sections=(*above, recipe.sections[-1]))
    if not _end_suits(recipe.fly.knot, _tip(recipe, practice), _tip(before, practice), practice):
        fitting = replace(fitting, fly=replace(recipe.fly, knot=None))
    if not _loop_suits(recipe, before, practice):
        fitting = replace(fitting, butt=replace(recipe.butt, end=None))
    return fitting


def _suits(knot: Knot, meeting: Meeting) -> bool:
    return untieable(knot, meeting) is None and unfit(knot, meeting) is None


def _end_suits(name: str | None, now: Meeting, then: Meeting, practice: Practice) -> bool:
    if name in (None, "none") or now == then:
        return True
    return _suits(practice.knots.find(str(name)), now)


def _loop_suits(recipe: Recipe, before: Recipe, practice: Practice) -> bool:
    end = recipe.butt.end
    became_level = is_level(recipe) and not is_level(before)
    if became_level and end not in (None, "none") and practice.knots.find(str(end)).tapered_only:
        return False
    return _end_suits(end, _top(recipe, practice), _top(before, practice), practice)


def _top(recipe: Recipe, practice: Practice) -> Meeting:
    first = recipe.sections[0]
    return _alone(first.material, first.diameter.mm, practice)


def _tip(recipe: Recipe, practice: Practice) -> Meeting:
    last = recipe.sections[-1]
    return _alone(last.material, fly_end_mm(last), practice)


def _alone(name: str, mm: Fraction, practice: Practice) -> Meeting:
    """Return a strand as a knot at an end meets it: with itself."""
    material = practice.materials.find(name)
    return Meeting(material, mm, material, mm)
