"""Leaders compared, in words: leaders and their measures in; a table and what differs out."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from tagend.cards.leader.passing import Spread
from tagend.cards.leader.waves import Measure, measure
from tagend.cards.practice.materials import Material
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


class Compared(Struct, frozen=True):
    """What is told of leaders side by side, in their order."""

    table: tuple[tuple[str, ...], ...]  # a row of headings, then one for each
    alike: str  # what all have; empty where that is nothing
    differs: tuple[str, ...]  # of each, what not all have
    notes: tuple[str, ...]


def compared(all_told: Sequence[Told]) -> Compared:
    """Return leaders side by side in words; of ranges both ends, and what is not known."""
    measures = [measure(told.leader) for told in all_told]
    pairs = list(zip(all_told, measures, strict=True))
    facts = [_facts(told, found) for told, found in pairs]
    wording = all_told[0].wording
    same = [fact for fact in facts[0] if all(fact in others for others in facts)]
    return Compared(
        table=(_heads(wording), *(_row(told, found) for told, found in pairs)),
        alike=wording.say("all_alike", what="; ".join(same)) if same else "",
        differs=tuple("; ".join(fact for fact in each if fact not in same) for each in facts),
        notes=(*_unknown(all_told), wording.say("middles"), wording.say("ideal_string")),
    )


def _heads(wording: Wording) -> tuple[str, ...]:
    say = wording.say
    passed, worst = say("energy_passed"), say("worst_joint")
    return say("leader"), say("total"), passed, worst, say("mass"), say("mass_thirds")


def _row(told: Told, found: Measure) -> tuple[str, ...]:
    wording, leader = told.wording, told.leader
    return (
        leader.recipe.name,
        told.span(leader.finished),
        _percent(found.passed, wording),
        _worst(found, wording),
        _grams([found.mass_g] if found.mass_g else (), wording),
        _grams(found.thirds_g or (), wording),
    )


def _facts(told: Told, found: Measure) -> tuple[str, ...]:
    """Return total, butt, tippet, what the line's tip meets and the worst joint, where known."""
    leader, say = told.leader, told.wording.say
    facts: tuple[str, ...] = (
        say("is_total", length=told.span(leader.finished)),
        say("is_butt", strand=told.thickness(leader.pieces[0])),
        told.tippet(),
    )
    if found.line is not None and found.line.reflection is not None:
        from_line = _percent(found.line.reflection, told.wording)
        facts = (*facts, say("from_line", reflected=from_line))
    if found.worst is None:
        return (*facts, *([say("no_worst")] if leader.joints else []))
    upper, lower = leader.pieces[found.worst - 1 : found.worst + 1]
    worst = say(
        "is_worst",
        joint=found.worst,
        upper=told.diameter(upper.section.tapers_to or upper.section.diameter),
        lower=told.diameter(lower.section.diameter),
        reflected=_percent(found.joints[found.worst - 1].reflection, told.wording),
    )
    return (*facts, worst)


def _worst(found: Measure, wording: Wording) -> str:
    if found.worst is None:
        return wording.say("not_known") if found.joints else "–"
    reflected = _percent(found.joints[found.worst - 1].reflection, wording)
    return wording.say("worst_of", joint=found.worst, reflected=reflected)


def _unknown(all_told: Sequence[Told]) -> Iterator[str]:
    """Yield of which materials density or modulus is not known."""
    wording = all_told[0].wording
    materials = [piece.material for told in all_told for piece in told.leader.pieces]
    if light := _names((each for each in materials if not each.density), wording):
        yield wording.say("no_density", materials=light)
    if limp := _names((each for each in materials if not each.modulus), wording):
        yield wording.say("no_modulus", materials=limp)


def _names(materials: Iterable[Material], wording: Wording) -> str:
    return ", ".join(dict.fromkeys(wording.material(each.name) for each in materials))


def _percent(share: Spread | None, wording: Wording) -> str:
    """Return a share in whole percent, below 0 where a wave meets a heavier string."""
    if share is None:
        return wording.say("not_known")
    low, high = (f"{round(100 * each)}".replace("-", "−") for each in (share.low, share.high))
    return f"{_range(low, high, wording)} %"


def _grams(masses: Iterable[Spread], wording: Wording) -> str:
    """Return masses to two digits, as many as densities have."""
    known = [_range(_two_digits(mass.low), _two_digits(mass.high), wording) for mass in masses]
    return f"{wording.listed(known)} g" if known else wording.say("not_known")


def _two_digits(number: float) -> str:
    return f"{number:#.2g}".removesuffix(".")


def _range(low: str, high: str, wording: Wording) -> str:
    return low if low == high else wording.say("range", low=low, high=high)
