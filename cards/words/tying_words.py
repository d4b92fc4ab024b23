"""The order of tying in words: a leader in; a line for each knot, with what it asks, out."""

from dataclasses import dataclass

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.tying_order import Tie, tying_order
from tagend.cards.practice.knots import Sides
from tagend.cards.words.knot_words import knot_words
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import end_words


@dataclass(frozen=True, slots=True, kw_only=True)
class TyingLine:
    """What is said of one knot to tie."""

    where: str
    says: str  # the knot and what is counted in it
    asks: str | None  # what must wait until it is tied
    seat: str


def tying_lines(leader: Leader, wording: Wording) -> tuple[TyingLine, ...]:
    """Return the knots in the order of tying, from the butt to the fly."""
    return tuple(
        TyingLine(
            where=_where(tie, wording),
            says=_says(tie, leader, wording),
            asks=_asks(tie, wording),
            seat=knot_words(tie.knot, wording).seat,
        )
        for tie in tying_order(leader)
    )


def turn_words(turns: Sides[int], wording: Wording) -> str:
    """Return what is counted in a knot: `4 turns thick, 6 thin`; nothing where nothing is."""
    thick, thin = turns.thick, turns.thin
    if not thick and not thin:
        return ""
    if thick == thin or not thick or not thin:
        return wording.say("turns", count=max(thick, thin))
    return wording.say("turns_of_both", count=thick, thin=thin)


def _where(tie: Tie, wording: Wording) -> str:
    if tie.above is None:
        return wording.say("at_butt")
    if tie.below is None:
        return wording.say("at_fly")
    return wording.say("range", low=tie.above, high=tie.below)


def _says(tie: Tie, leader: Leader, wording: Wording) -> str:
    if tie.above is None:
        return end_words(leader.butt, leader, wording)
    if tie.below is None:
        return end_words(leader.fly, leader, wording)
    turns = turn_words(leader.joints[tie.above - 1].turns, wording)
    return ", ".join(filter(None, (wording.knot(tie.knot.name), turns)))


def _asks(tie: Tie, wording: Wording) -> str | None:
    """Return what a knot asks through which the whole piece below passes."""
    if tie.passes is None:
        return None
    if not tie.before:
        return wording.say("passes_before_fly", section=tie.passes)
    return wording.say("passes_before", section=tie.passes, next=tie.passes + 1)
