"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator

from tagend.cards.leader.audit.finding import Found
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.suitability import Meeting, disputed, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules import Severity


def _knots(leader: Leader, practice: Practice) -> Iterator[tuple[int, str, Knot, Meeting]]:
    """Yield each knot with its section, its place in words and the strands that it is tied in."""
    first, last = leader.pieces[0].section, leader.pieces[-1].section
    if leader.butt.knot is not None and not first.bought:
        strand, size = practice.materials.find(first.material), first.diameter.mm
        yield 1, "at the butt", leader.butt.knot, Meeting(strand, size, strand, size)
    for place, joint in enumerate(leader.joints, start=1):
        yield place, f"below section {place}", joint.knot, joint.meeting
    if leader.fly.knot is not None and not last.bought:
        strand, size = practice.materials.find(last.material), fly_end_mm(last)
        place = len(leader.pieces)
        yield place, "at the fly", leader.fly.knot, Meeting(strand, size, strand, size)


def untieable_knots(leader: Leader, practice: Practice) -> Iterator[Found]:
    """Find knots that do not hold on what they are tied in."""
    for place, where, knot, meeting in _knots(leader, practice):
        against = untieable(knot, meeting)
        if against:
            yield Found(place, f"{knot.name} {where}", reason=against)


def unfit_knots(leader: Leader, practice: Practice) -> Iterator[Found]:
    """Find knots that practice advises against where they are."""
    for place, where, knot, meeting in _knots(leader, practice):
        against = unfit(knot, meeting)
        if against:
            milder: Severity | None = "note" if disputed(knot, meeting) else None
            yield Found(place, f"{knot.name} {where}", milder, against)


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
