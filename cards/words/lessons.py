"""The knots of one leader as lessons: a leader in; each of its knots once, with its steps, out."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.practice.knots import Knot, turns
from tagend.cards.words.language import Wording


class Lesson(NamedTuple):
    """One knot and the turns that it has in one leader, wherever it is tied."""

    knot: Knot
    counts: tuple[tuple[int, int], ...]  # turns thick and thin, at each place
    name: str
    steps: tuple[str, ...]  # with the turns counted in
    strands: tuple[str, str] = ("", "")  # what the thick and the thin one of a joint are called


def lessons(leader: Leader, wording: Wording) -> tuple[Lesson, ...]:
    """Return each knot that the leader uses, from the butt to the fly."""
    counts: dict[str, list[tuple[int, int]]] = {}
    knots: dict[str, Knot] = {}
    for knot, count in _knots(leader):
        knots[knot.name] = knot
        counts.setdefault(knot.name, []).append(count)
    return tuple(_lesson(knot, tuple(counts[name]), wording) for name, knot in knots.items())


def _lesson(knot: Knot, counts: tuple[tuple[int, int], ...], wording: Wording) -> Lesson:
    thick, thin = zip(*counts, strict=True)
    steps = knot.steps_with(_range(thick, wording), _range(thin, wording))
    strands = wording.say("thick_strand"), wording.say("thin_strand")
    name = wording.knot_title(knot.name)
    return Lesson(knot, counts, name, steps, strands if "joint" in knot.places else ("", ""))


def _knots(leader: Leader) -> Iterator[tuple[Knot, tuple[int, int]]]:
    first, last = leader.recipe.sections[0], leader.recipe.sections[-1]
    if leader.butt.knot is not None:
        count = turns(leader.butt.knot, first.diameter.mm, first.diameter.mm, "thick")
        yield leader.butt.knot, (count, count)
    for joint in leader.joints:
        yield joint.knot, joint.turns
    if leader.fly.knot is not None:
        size = fly_end_mm(last)
        count = turns(leader.fly.knot, size, size, "thin")
        yield leader.fly.knot, (count, count)


def _range(counts: Iterable[int], wording: Wording) -> str:
    """Return counts in words: `5`, `4 or 5`, `5 to 7`."""
    distinct = sorted(set(counts))
    if len(distinct) == 1:
        return str(distinct[0])
    return wording.say(
        "either" if len(distinct) == 2 else "range", low=distinct[0], high=distinct[-1]
    )
