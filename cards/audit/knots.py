"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator

from cards.audit.finding import Found
from cards.fitness import disputed, unfit, untieable
from cards.leader import Leader
from cards.parts import is_level
from cards.practice import Practice
from cards.rules import Severity


def untieable_knots(leader: Leader, _: Practice) -> Iterator[Found]:
    """Find knots that do not hold on what they join."""
    for place, joint in enumerate(leader.joints, start=1):
        against = untieable(joint.knot, joint.meeting)
        if against:
            yield Found(place, f"{joint.knot.name} below section {place}", reason=against)


def unfit_knots(leader: Leader, _: Practice) -> Iterator[Found]:
    """Find knots that practice advises against where they are."""
    for place, joint in enumerate(leader.joints, start=1):
        against = unfit(joint.knot, joint.meeting)
        if against:
            milder: Severity | None = "note" if disputed(joint.knot, joint.meeting) else None
            yield Found(place, f"{joint.knot.name} below section {place}", milder, against)


def unfit_loop(leader: Leader, _: Practice) -> Iterator[Found]:
    """Find a loop for tapered butts on a level leader."""
    knot = leader.butt.knot
    if knot is not None and knot.tapered_only and is_level(leader.recipe):
        yield Found(1, f"{knot.name} on a level leader")


KNOT_RULES = {
    "untieable knot": untieable_knots,
    "unfit knot": unfit_knots,
    "unfit loop": unfit_loop,
}
