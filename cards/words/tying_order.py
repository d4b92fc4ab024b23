"""The order of tying: a leader in; its knots in an order that can be tied, out."""

from collections.abc import Iterator
from dataclasses import dataclass

from tagend.cards.leader.leader import Leader
from tagend.cards.practice.knots import Knot
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import end_words


@dataclass(frozen=True, slots=True)
class Tie:
    """One knot to tie."""

    where: str
    knot: Knot
    says: str  # the knot and what is counted in it
    asks: str | None  # what must wait until it is tied
    before: tuple[int, ...] = ()  # sections whose lower joints must be tied after it


def tying_order(leader: Leader, wording: Wording) -> tuple[Tie, ...]:
    """Return the knots from the butt to the fly: the order that every knot allows.

    Where a piece must pass whole through a knot, nothing may hang on it yet.
    """
    return tuple(_ties(leader, wording))


def turn_words(thick: int, thin: int, wording: Wording) -> str:
    """Return what is counted in a knot: `4 turns thick, 6 thin`; nothing where nothing is."""
    if not thick and not thin:
        return ""
    if thick == thin or not thick or not thin:
        return wording.say("turns", count=max(thick, thin))
    return wording.say("turns_of_both", thick=thick, thin=thin)


def _ties(leader: Leader, wording: Wording) -> Iterator[Tie]:
    if leader.butt.knot is not None:
        says = end_words(leader.butt, leader, wording)
        yield Tie(wording.say("at_butt"), leader.butt.knot, says, None)
    last = len(leader.joints)
    for place, joint in enumerate(leader.joints, start=1):
        later = tuple(range(place + 1, last + 1)) if joint.knot.whole_side_passes else ()
        counted = turn_words(*joint.turns, wording)
        yield Tie(
            wording.say("range", low=place, high=place + 1),
            joint.knot,
            ", ".join(filter(None, (wording.knot(joint.knot.name), counted))),
            _asks(place, last, wording) if joint.knot.whole_side_passes else None,
            later,
        )
    if leader.fly.knot is not None:
        says = end_words(leader.fly, leader, wording)
        yield Tie(wording.say("at_fly"), leader.fly.knot, says, None)


def _asks(place: int, last: int, wording: Wording) -> str:
    """Return what a knot asks through which the whole piece below passes."""
    below = place + 1
    if place == last:
        return wording.say("passes_before_fly", section=below)
    return wording.say("passes_before", section=below, next=below + 1)
