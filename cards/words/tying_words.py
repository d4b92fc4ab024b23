"""The order of tying in words: a leader in; a line for each knot, with what it asks, out."""

from dataclasses import dataclass

from tagend.cards.leader.tying_order import Tie, tying_order
from tagend.cards.practice.knots import Sides
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


@dataclass(frozen=True, slots=True, kw_only=True)
class TyingLine:
    """What is said of one knot to tie."""

    where: str
    says: str  # the knot and what is counted in it
    asks: str | None  # what must wait until it is tied
    seat: str


def tying_lines(told: Told) -> tuple[TyingLine, ...]:
    """Return the knots in the order of tying, from the butt to the fly."""
    return tuple(_line(tie, told) for tie in tying_order(told.leader))


def turn_words(turns: Sides[int], wording: Wording) -> str:
    """Return what is counted in a knot: `4 turns thick, 6 thin`; nothing where nothing is."""
    counted = {turns.heavy, turns.light} - {0}
    if len(counted) > 1:
        return wording.say("turns_of_both", count=turns.heavy, light=turns.light)
    return wording.say("turns", count=max(counted)) if counted else ""


def _line(tie: Tie, told: Told) -> TyingLine:
    leader, wording = told.leader, told.wording
    if tie.above is None:
        where, says = wording.say("at_butt"), told.end(leader.butt)
    elif tie.below is None:
        where, says = wording.say("at_fly"), told.end(leader.fly)
    else:
        where = wording.say("range", low=tie.above, high=tie.below)
        turns = turn_words(leader.joints[tie.above - 1].turns, wording)
        says = ", ".join(filter(None, (wording.knot(tie.knot.name), turns)))
    seat = knot_in(wording, tie.knot).seat
    return TyingLine(where=where, says=says, asks=_asks(tie, wording), seat=seat)


def _asks(tie: Tie, wording: Wording) -> str | None:
    """Return what a knot asks through which the whole piece below passes."""
    if tie.passes is None:
        return None
    if not tie.before:
        return wording.say("passes_before_fly", section=tie.passes)
    return wording.say("passes_before", section=tie.passes, next=tie.passes + 1)
