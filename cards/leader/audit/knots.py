"""Rules on the knots: whether each suits what it joins."""

from collections.abc import Iterator, Mapping
from typing import Literal

from msgspec import Struct

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import is_level
from tagend.cards.leader.said import Said, said
from tagend.cards.leader.suitability import disputed, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.rules import Rule, Severity


class _Tied(Struct, frozen=True):
    """A knot in a leader."""

    where: Literal["at_butt", "below", "at_fly"]
    section: int
    knot: Knot
    tied: Joint | End

    @property
    def says(self) -> Said:
        """What it is, and where."""
        return said(f"knot_{self.where}", knot=self.knot.name, section=self.section)


def _knots(leader: Leader) -> Iterator[_Tied]:
    last = leader.pieces[-1]
    if leader.butt.knot is not None and not leader.butt.made:
        yield _Tied("at_butt", 1, leader.butt.knot, leader.butt)
    for place, joint in enumerate(leader.joints, start=1):
        yield _Tied("below", place, joint.knot, joint)
    if leader.fly.knot is not None and not last.bought:
        yield _Tied("at_fly", last.place, leader.fly.knot, leader.fly)


def untieable_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that do not hold on what they are tied in."""
    for each in _knots(leader):
        against = untieable(each.knot, each.tied.meeting)
        if against:
            yield Fact(each.section, each.says, reason=against)
    for piece in leader.pieces:
        if piece.section.dropper and piece.material.strand == "thread":
            says = said("dropper_below", section=piece.place)
            yield Fact(piece.place, says, reason=said("thread_has_no_tag"))


def unfit_knots(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find knots that practice advises against where they are.

    A person's own departure from custom is worth a note; but between nylon and fluorocarbon print
    warns of some knots, and of hard nylon it disagrees.
    """
    for each in _knots(leader):
        knot, meeting = each.knot, each.tied.meeting
        against = unfit(knot, meeting)
        if against:
            mixed = meeting.mixed and knot.mixed != "yes"
            warned = not disputed(knot, meeting) if mixed else not each.tied.own
            milder: Severity | None = None if warned else "note"
            yield Fact(each.section, each.says, milder, against)


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
