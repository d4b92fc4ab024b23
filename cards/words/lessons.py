"""The knots of one leader as lessons: a leader in; each of its knots once, with its steps, out."""

from collections.abc import Iterable
from dataclasses import dataclass

from tagend.cards.leader.joints import End, Joint
from tagend.cards.practice.knots import COUNT, LENGTHS, Knot, Sides
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """One knot and the turns that it has in one leader, wherever it is tied."""

    knot: Knot
    turns: tuple[Sides[int], ...]  # at each place
    name: str
    steps: tuple[str, ...]  # with the turns counted in
    caution: str | None = None
    strands: tuple[str, str] = ("", "")  # what the thick and the thin one of a joint are called


def lessons(told: Told) -> tuple[Lesson, ...]:
    """Return each knot that the leader uses, from the butt to the fly."""
    leader = told.leader
    turns: dict[str, list[Sides[int]]] = {}
    knots: dict[str, Knot] = {}
    every: tuple[Joint | End, ...] = (leader.butt, *leader.joints, leader.fly)
    for tied in every:
        if tied.knot is not None:
            knots[tied.knot.name] = tied.knot
            turns.setdefault(tied.knot.name, []).append(tied.turns)
    return tuple(_lesson(knot, tuple(turns[name]), told.wording) for name, knot in knots.items())


def _lesson(knot: Knot, turns: tuple[Sides[int], ...], wording: Wording) -> Lesson:
    words = knot_in(wording, knot)
    strands = wording.say("heavy_strand"), wording.say("light_strand")
    return Lesson(
        knot=knot,
        turns=turns,
        name=wording.knot_title(knot.name),
        steps=counted(words.steps, turns, wording),
        caution=words.caution,
        strands=strands if "joint" in knot.places else ("", ""),
    )


def counted(steps: Iterable[str], turns: Iterable[Sides[int]], wording: Wording) -> tuple[str, ...]:
    """Return the steps with the turns of each side counted in: `5`, or `5 to 7`.

    `{turns}` counts both sides. A length is told by the table that gives it.
    """
    thick, thin = zip(*((each.heavy, each.light) for each in turns), strict=True)
    said = {
        **dict.fromkeys(LENGTHS, wording.say("by_the_table")),
        "heavy": _range(thick, wording),
        "light": _range(thin, wording),
        "turns": _range((*thick, *thin), wording),
    }
    return tuple(COUNT.sub(lambda place: said[place[1]], step) for step in steps)


def _range(counts: Iterable[int], wording: Wording) -> str:
    """Return counts in words: `5`, `4 or 5`, `5 to 7`."""
    distinct = sorted(set(counts))
    low, high = distinct[0], distinct[-1]
    if low == high:
        return str(low)
    return wording.say("either" if len(distinct) == 2 else "range", low=low, high=high)
