"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator

from cards.audit.finding import Found
from cards.fitness import disputed, unfit, untieable
from cards.leader import Leader
from cards.parts import is_level
from cards.practice import Practice


def untieable_knots(leader: Leader, _: Practice) -> Iterator[Found]:
    for place, joint in enumerate(leader.joints, start=1):
        against = untieable(joint.knot, joint.meeting)
        if against:
            yield Found(place, f"{joint.knot.name} below section {place}", reason=against)


def unfit_knots(leader: Leader, _: Practice) -> Iterator[Found]:
    for place, joint in enumerate(leader.joints, start=1):
        against = unfit(joint.knot, joint.meeting)
        if against:
            milder = "note" if disputed(joint.knot, joint.meeting) else None
            yield Found(
                place, f"{joint.knot.name} below section {place}", milder, against
            )


def unfit_loop(leader: Leader, _: Practice) -> Iterator[Found]:
    knot = leader.butt.knot
    if knot is not None and knot.tapered_only and is_level(leader.recipe):
        yield Found(1, f"{knot.name} on a level leader")


KNOT_RULES = {
    "untieable knot": untieable_knots,
    "unfit knot": unfit_knots,
    "unfit loop": unfit_loop,
}
