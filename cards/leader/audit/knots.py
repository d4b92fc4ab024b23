"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator, Mapping

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import is_level
from tagend.cards.leader.said import Said, said
from tagend.cards.leader.suitability import disputed, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.rules import Rule, Severity


def _knots(leader: Leader) -> Iterator[tuple[int, Said, Knot, Joint | End]]:
    """Yield each knot with its section, what it is and where, and the joint or end itself."""
    first, last = leader.pieces[0], leader.pieces[-1]
    if leader.butt.knot is not None and not leader.butt.made:
        knot = leader.butt.knot
        yield first.place, said("knot_at_butt", knot=knot.name), knot, leader.butt
    for place, joint in enumerate(leader.joints, start=1):
        says = said("knot_below", knot=joint.knot.name, section=place)
        yield place, says, joint.knot, joint
    if leader.fly.knot is not None and not last.bought:
        knot = leader.fly.knot
        yield last.place, said("knot_at_fly", knot=knot.name), knot, leader.fly


def untieable_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that do not hold on what they are tied in."""
    for place, says, knot, tied in _knots(leader):
        against = untieable(knot, tied.meeting)
        if against:
            yield Fact(place, says, reason=against)
    for piece in leader.pieces:
        if piece.section.dropper and piece.material.strand == "thread":
            says = said("dropper_below", section=piece.place)
            yield Fact(piece.place, says, reason=said("thread_has_no_tag"))


def unfit_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that practice advises against where they are.

    A person's own departure from custom is worth a note; but between nylon and fluorocarbon print
    warns of some knots, and of hard nylon it disagrees.
    """
    for place, says, knot, tied in _knots(leader):
        against = unfit(knot, tied.meeting)
        mixed = tied.meeting.mixed and knot.mixed != "yes"
        if against:
            warned = not disputed(knot, tied.meeting) if mixed else not tied.own
            milder: Severity | None = None if warned else "note"
            yield Fact(place, says, milder, against)


def unfit_loop(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find a loop for tapered butts on a level leader."""
    knot = leader.butt.knot
    if knot is not None and knot.tapered_only and is_level(leader.recipe):
        yield Fact(1, said("knot_on_level", knot=knot.name))


KNOT_RULES: Mapping[str, Look] = {
    "untieable knot": untieable_knots,
    "unfit knot": unfit_knots,
    "unfit loop": unfit_loop,
}
