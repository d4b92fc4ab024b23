"""The knots of one leader: those its recipe names, and the rest chosen by rule, with the reason."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from cards.fitness import Meeting, unfit, untieable
from cards.knots import Knot
from cards.parts import fly_end_mm, is_level
from cards.practice import Practice
from cards.recipe import Recipe


@dataclass(frozen=True, slots=True)
class Joint:
    """The knot between a section and the next."""

    meeting: Meeting
    knot: Knot
    reason: str | None  # why the rule chose it; None where the recipe names it


@dataclass(frozen=True, slots=True)
class End:
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
    level = is_level(recipe)
    knot = next(k for k in practice.choice["butt"] if not (level and k.tapered_only))
    return End(knot, loop, f"usual on a {'level leader' if level else 'tapered butt'}")


def fly_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly; where none is named, line for a usual knot is kept."""
    if recipe.fly.knot == "none":
        return End(None, Fraction(0), None)
    loop = practice.knots.fly_loop_mm
    if recipe.fly.knot:
        return End(practice.knots.find(recipe.fly.knot), loop, None)
    last = recipe.sections[-1]
    wire = practice.materials.find(last.material).kind == "wire"
    size = fly_end_mm(last)
    knot = next(k for k in practice.choice["fly"] if k.takes_strand(size, wire=wire))
    return End(knot, loop, "none is named, so line for this one is kept")


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
    passed_over: list[str] = []
    for knot in practice.choice["joint"]:
        against = untieable(knot, meeting) or unfit(knot, meeting)
        if against is None:
            return Joint(meeting, knot, "; ".join(_because(passed_over)))
        passed_over.append(f"not {knot.name}: {against}")
    raise AssertionError("the last joint of the order takes every meeting")


def _because(passed_over: list[str]) -> Iterator[str]:
    if passed_over:
        yield passed_over[-1]
    else:
        yield "one kind of line and a small step"
