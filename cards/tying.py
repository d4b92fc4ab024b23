"""The knots of one leader as lessons: a leader in; each of its knots once, with its steps, out."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from cards.knots import Knot, turns
from cards.leader import Leader
from cards.parts import fly_end_mm


class Lesson(NamedTuple):
    """One knot and the turns that it has in one leader, wherever it is tied."""

    knot: Knot
    counts: tuple[tuple[int, int], ...]  # turns thick and thin, at each place

    @property
    def steps(self) -> tuple[str, ...]:
        """The tying steps with the turns counted in."""
        thick, thin = zip(*self.counts, strict=True)
        return self.knot.steps_with(_range(thick), _range(thin))


def lessons(leader: Leader) -> tuple[Lesson, ...]:
    """Return each knot that the leader uses, from the butt to the fly."""
    seen: dict[str, Lesson] = {}
    for knot, count in _knots(leader):
        before = seen[knot.name].counts if knot.name in seen else ()
        seen[knot.name] = Lesson(knot, (*before, count))
    return tuple(seen.values())


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


def _range(counts: Iterable[int]) -> str:
    """Return counts in words: `5`, `4 or 5`, `5 to 7`."""
    distinct = sorted(set(counts))
    if len(distinct) == 1:
        return str(distinct[0])
    word = "or" if len(distinct) == 2 else "to"
    return f"{distinct[0]} {word} {distinct[-1]}"
