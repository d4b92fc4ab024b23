"""The order of tying: a leader in; its knots in an order that can be tied, out."""

from collections.abc import Iterator
from dataclasses import dataclass

from cards.knots import Knot
from cards.leader import Leader
from cards.words import end_words


@dataclass(frozen=True, slots=True)
class Tie:
    """One knot to tie."""

    where: str
    knot: Knot
    says: str  # the knot and what is counted in it
    asks: str | None  # what must wait until it is tied
    before: tuple[int, ...] = ()  # sections whose lower joints must be tied after it


def tying_order(leader: Leader) -> tuple[Tie, ...]:
    """Return the knots from the butt to the fly: the order that every knot allows.

    Where a piece must pass whole through a knot, nothing may hang on it yet.
    """
    return tuple(_ties(leader))


def turn_words(thick: int, thin: int) -> str:
    """Return what is counted in a knot: `4 turns thick, 6 thin`; nothing where nothing is."""
    if not thick and not thin:
        return ""
    if thick == thin or not thick or not thin:
        return f"{max(thick, thin)} turns"
    return f"{thick} turns thick, {thin} thin"


def _ties(leader: Leader) -> Iterator[Tie]:
    if leader.butt.knot is not None:
        yield Tie("at the butt", leader.butt.knot, end_words(leader.butt, leader), None)
    last = len(leader.joints)
    for place, joint in enumerate(leader.joints, start=1):
        later = tuple(range(place + 1, last + 1)) if joint.knot.whole_side_passes else ()
        counted = turn_words(*joint.turns)
        yield Tie(
            f"{place} to {place + 1}",
            joint.knot,
            ", ".join(filter(None, (joint.knot.name, counted))),
            _asks(place, last) if joint.knot.whole_side_passes else None,
            later,
        )
    if leader.fly.knot is not None:
        yield Tie("at the fly", leader.fly.knot, end_words(leader.fly, leader), None)


def _asks(place: int, last: int) -> str:
    """Return what a knot asks through which the whole piece below passes."""
    if place == last:
        return f"section {place + 1} passes through whole, so tie it before the fly"
    return f"section {place + 1} passes through whole, so tie it before {place + 1} to {place + 2}"
