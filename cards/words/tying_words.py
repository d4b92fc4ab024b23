"""The order of tying in words: a leader in; a line for each knot, with what it asks, out."""

from msgspec import Struct

from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.tying_order import Tie, tying_order
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


class TyingLine(Struct, frozen=True, kw_only=True):
    """What is said of one knot to tie."""

    where: str
    says: str  # the knot, what is counted in it, and how its ends are lapped or folded
    asks: str | None  # what must wait until it is tied
    seat: str


def tying_lines(told: Told) -> tuple[TyingLine, ...]:
    """Return the knots in the order of tying, from the butt to the fly."""
    return tuple(_line(tie, told) for tie in tying_order(told.leader))


def turn_words(joint: Joint, place: int, wording: Wording) -> str:
    """Return what is counted in the joint below a section: `4 turns above, 6 below`.

    Where one strand alone winds it says which: `10 turns of section 2`. Of a knot that lies
    between two, it says how each side is tied: `clinch, 5 turns + haywire twist, 6 turns`.
    """
    if joint.knot.ties:
        sides = (
            ", ".join(filter(None, (wording.knot(half.knot.name), _turns(half.turns, wording))))
            for half in (joint.above, joint.below)
            if half.knot != joint.knot  # which was bought with the piece
        )
        return " + ".join(dict.fromkeys(sides))
    if joint.winds not in (None, "both"):
        below = joint.winds == "below"
        count = (joint.below if below else joint.above).turns
        return wording.say("turns_of_section", count=count, section=place + below)
    if joint.above.turns == joint.below.turns:
        return _turns(joint.above.turns, wording)
    return wording.say("turns_of_both", count=joint.above.turns, below=joint.below.turns)


def _turns(count: int, wording: Wording) -> str:
    return wording.say("turns", count=count) if count else ""


def _line(tie: Tie, told: Told) -> TyingLine:
    leader, wording = told.leader, told.wording
    if tie.above is None:
        where, says = wording.say("butt"), _end(leader.butt, told)
    elif tie.below is None:
        where, says = wording.say("fly"), _end(leader.fly, told)
    else:
        where = wording.say("range", low=tie.above, high=tie.below)
        turns = turn_words(leader.joints[tie.above - 1], tie.above, wording)
        words = (wording.knot(tie.knot.name), turns, told.lap(tie.above))
        says = ", ".join(filter(None, words))
    seat = knot_in(wording, tie.knot).seat
    return TyingLine(where=where, says=says, asks=_asks(tie, wording), seat=seat)


def _end(end: End, told: Told) -> str:
    turns = _turns(end.turns.heavy, told.wording)
    return ", ".join(filter(None, (told.end(end), turns, told.fold(end))))


def _asks(tie: Tie, wording: Wording) -> str | None:
    """Return what a knot asks through which the whole piece below passes."""
    if tie.passes is None:
        return None
    if not tie.before:
        return wording.say("passes_before_fly", section=tie.passes)
    return wording.say("passes_before", section=tie.passes, next=tie.passes + 1)
