"""The knots of one leader as lessons: a leader in; each of its knots once, with its steps, out."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.leader.allowance import Allowance
from tagend.cards.leader.joints import End, Half
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.knots import COUNT, Knot, Sides
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.leader_words import Told


class Lesson(Struct, frozen=True, kw_only=True):
    """One knot and the turns that it has in one leader, wherever it is tied."""

    knot: Knot
    turns: tuple[Sides[int], ...]  # at each place
    name: str
    steps: tuple[str, ...]  # with the turns counted in
    caution: str | None = None
    strands: tuple[str, str] = ("", "")  # what the heavy and the light one of a joint are called
    laid: str = ""  # how far the ends lie over one another, or are folded back
    seat: str = ""
    wording: Wording = ENGLISH


class _Place(Struct, frozen=True):
    """Where a knot is tied: its turns there, and what its sides take in mm."""

    knot: Knot
    turns: Sides[int]
    takes: Sides[Fraction]
    loop_mm: Fraction
    tied: tuple[str, str] = ("", "")  # the knots of the side above and of the one below
    drawn: bool = True  # is it tied as its figure shows it?


def lessons(told: Told, *more: Told) -> tuple[Lesson, ...]:
    """Return each knot that a leader uses, from the butt to the fly, or `more` leaders, once.

    Below a knot that lies between two come the knots that its sides are tied with.
    """
    places: dict[str, list[_Place]] = {}
    for each in (told, *more):
        for place in _places(each.leader):
            places.setdefault(place.knot.name, []).append(place)
    return tuple(_lesson(at, told) for at in places.values())


def _places(leader: Leader) -> Iterator[_Place]:
    pieces = leader.pieces
    yield from _joining(leader.butt)
    yield from _end(leader.butt.half, pieces[0].at_butt)
    for joint, upper, lower in zip(leader.joints, pieces, pieces[1:], strict=False):
        taken = upper.at_fly, lower.at_butt
        above, below = taken[0].takes_mm, taken[1].takes_mm
        takes = Sides(above, below) if joint.sides[0] == "heavy" else Sides(below, above)
        tied = joint.above.knot.name, joint.below.knot.name
        drawn = not joint.knot.apart or {*tied} == {*joint.knot.ties[:1]}
        yield _Place(
            knot=joint.knot,
            turns=joint.turns,
            takes=takes,
            loop_mm=max(end.loop_mm for end in taken),
            tied=tied,
            drawn=drawn,
        )
        for half, allowance in zip((joint.above, joint.below), taken, strict=True):
            if joint.knot.ties:
                yield from _end(half, allowance)
    yield from _end(leader.fly.half, pieces[-1].at_fly)


def _joining(end: End) -> Iterator[_Place]:
    """Yield the knot to the fly line that joins a loop, which is tied by a knot of its own."""
    if end.knot is not None and end.knot.ties:
        none = Sides(Fraction(0), Fraction(0))
        yield _Place(end.knot, Sides(0, 0), none, end.loop_mm)


def _end(half: Half | None, taken: Allowance) -> Iterator[_Place]:
    """Yield a knot that a strand ties with itself, unless it was bought with it."""
    if half is not None and taken.knot is not None:
        mm = taken.takes_mm
        yield _Place(half.knot, Sides(half.turns, half.turns), Sides(mm, mm), taken.loop_mm)


def _lesson(places: Sequence[_Place], told: Told) -> Lesson:
    knot, wording = places[0].knot, told.wording
    words, turns = knot_in(wording, knot), tuple(place.turns for place in places)
    filled = _filled(places, told)
    return Lesson(
        knot=knot if all(place.drawn for place in places) else replace(knot, figure=False),
        turns=turns,
        name=wording.knot_title(knot.name),
        steps=counted(words.steps, turns, filled, wording),
        caution=words.caution,
        strands=words.roles if "joint" in knot.places else ("", ""),
        laid=_laid(words, filled, wording),
        seat=words.seat,
        wording=wording,
    )


def _laid(knot: Knot, filled: Mapping[str, str], wording: Wording) -> str:
    """Return what the first step asks to be laid or folded, as the steps have it."""
    asked = {place for step in knot.steps for place in COUNT.findall(step)}
    if "lap" in asked:
        return wording.say("lap_of", length=filled["lap"])
    if "fold" in asked:
        return wording.say("fold_of", length=filled["fold"])
    sides = zip(knot.roles, ("heavy_fold", "light_fold"), strict=True)
    return ", ".join(f"{role} {filled[side]}" for role, side in sides if side in asked)


def counted(
    steps: Iterable[str],
    turns: Iterable[Sides[int]],
    filled: Mapping[str, str],
    wording: Wording,
) -> tuple[str, ...]:
    """Return the steps with turns put in, `5` or `5 to 7`, and what else is to be filled in.

    `{turns}` counts both sides.
    """
    heavy, light = zip(*((each.heavy, each.light) for each in turns), strict=True)
    said = {
        **filled,
        "heavy": counts_said(heavy, wording),
        "light": counts_said(light, wording),
        "turns": counts_said((*heavy, *light), wording),
    }
    return tuple(COUNT.sub(lambda place: said[place[1]], step) for step in steps)


def _filled(places: Sequence[_Place], told: Told) -> dict[str, str]:
    """Return what a step may say besides turns: all of `LENGTHS`, and both of `TIED`."""
    each = [(at.takes.heavy + at.takes.light, at.takes.heavy, at.takes.light) for at in places]
    lap, heavy, light = (_lengths(mm, told) for mm in zip(*each, strict=True))
    upper, lower = (
        " / ".join(dict.fromkeys(map(told.wording.knot, side)))
        for side in zip(*(at.tied for at in places), strict=True)
    )
    return {
        "lap": lap,
        "fold": heavy,
        "heavy_fold": heavy,
        "light_fold": light,
        "loop": " / ".join(dict.fromkeys(told.loop(at.loop_mm) for at in places)),
        "upper": upper,
        "lower": lower,
    }


def _lengths(each: Iterable[Fraction], told: Told) -> str:
    """Return a length, or the least and the most: `9 3/4 in`, `6 1/4 to 9 3/4 in`."""
    low, *_, high = (distinct := sorted(set(each))) * 2
    if len(distinct) == 1:
        return told.taken(low)
    return told.wording.say("range", low=told.taken_number(low), high=told.taken(high))


def counts_said(counts: Iterable[int], wording: Wording) -> str:
    """Return counts in words: `5`, `4 or 5`, `5 to 7`."""
    distinct = sorted(set(counts))
    low, high = distinct[0], distinct[-1]
    if low == high:
        return str(low)
    return wording.say("either" if len(distinct) == 2 else "range", low=low, high=high)
