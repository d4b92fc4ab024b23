"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator, Mapping

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import is_level
from tagend.cards.leader.suitability import disputed, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.rules import Rule, Severity


def _knots(leader: Leader) -> Iterator[tuple[int, str, Knot, Joint | End]]:
    """Yield each knot with its section, its place in words and the joint or end that it is."""
    first, last = leader.pieces[0], leader.pieces[-1]
    if leader.butt.knot is not None and not leader.butt.made:
        yield first.place, "at the butt", leader.butt.knot, leader.butt
    for place, joint in enumerate(leader.joints, start=1):
        yield place, f"below section {place}", joint.knot, joint
    if leader.fly.knot is not None and not last.bought:
        yield last.place, "at the fly", leader.fly.knot, leader.fly


def untieable_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that do not hold on what they are tied in."""
    for place, where, knot, tied in _knots(leader):
        against = untieable(knot, tied.meeting)
        if against:
            yield Fact(place, f"{knot.name} {where}", reason=against)
    for piece in leader.pieces:
        if piece.section.dropper and piece.material.strand == "thread":
            why = "braided and furled line has no tag to leave long"
            yield Fact(piece.place, f"the dropper below section {piece.place}", reason=why)


def unfit_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that practice advises against where they are.

    A person's own departure from custom is worth a note; but between nylon and fluorocarbon print
    warns of some knots, and of hard nylon it disagrees.
    """
    for place, where, knot, tied in _knots(leader):
        against = unfit(knot, tied.meeting, leader.unit)
        mixed = tied.meeting.mixed and knot.mixed != "yes"
        if against:
            warned = not disputed(knot, tied.meeting) if mixed else not tied.own
            milder: Severity | None = None if warned else "note"
            yield Fact(place, f"{knot.name} {where}", milder, against)


def unfit_loop(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find a loop for tapered butts on a level leader."""
    knot = leader.butt.knot
    if knot is not None and knot.tapered_only and is_level(leader.recipe):
        yield Fact(1, f"{knot.name} on a level leader")


KNOT_RULES: Mapping[str, Look] = {
    "untieable knot": untieable_knots,
    "unfit knot": unfit_knots,
    "unfit loop": unfit_loop,
}
