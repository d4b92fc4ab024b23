"""A person's own hands and habits as fields: which knot where, what one takes; one tied, learnt."""

from collections.abc import Iterator, Mapping
from typing import Any

from tagend.cards.base.units import parse_length
from tagend.cards.desk.page import Json
from tagend.cards.desk.typed import Typed
from tagend.cards.leader.learning import learn, written_key
from tagend.cards.leader.usual_meetings import fitting
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.words.language import Wording
from tagend.layouts.base.faults import Refused, under


def choices(
    said: Mapping[str, Any], practice: Practice, wording: Wording
) -> list[dict[str, object]]:
    """Return each way strands meet, the knot of the person's own there, and those that fit.

    Where a person has written several, they are one text.
    """
    return [
        {
            "meets": meets,
            "own": _listed(said.get(meets, "")),
            "usual": wording.knot(choice.usual[0].name),
            "fits": {knot.name: wording.knot(knot.name) for knot in fitting(meets, practice)},
        }
        for meets, choice in practice.choice.items()
    ]


def _listed(value: Any) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)


def laps(said: Mapping[str, Any], practice: Practice, wording: Wording) -> Iterator[dict[str, Any]]:
    """Yield each lap of the person's own: its key, its knot, and its text or that of both sides."""
    for key, value in said.items():
        try:
            name = wording.knot(practice.knots.find(key).name)
        except Refused:  # which is told of the whole file
            name = key
        sides = value if isinstance(value, Mapping) else {}
        yield {"key": key, "name": name, "text": "" if sides else str(value), "sides": sides}


def knots_to_learn(practice: Practice, wording: Wording) -> list[dict[str, object]]:
    """Return the knots of which one that was tied tells what it takes, by their names in words.

    A joint is tied with two pieces of line; one with a fold on each side has no lap to learn.
    """
    found = [
        {"name": knot.name, "told": wording.knot(knot.name), "pieces": 1 + ("joint" in knot.places)}
        for knot in practice.knots
        if knot.lapped or "joint" not in knot.places
    ]
    return sorted(found, key=lambda each: str(each["told"]))


def learned(practice: Practice, shop: Shop, typed: Typed) -> Json:
    """Return the lap or fold that a knot took, and what the shop's file says of it already.

    Raises `Refused`, naming the field.
    """
    knot = practice.knots.find(typed.text("knot") or "")
    names = ("before", "before_2") if "joint" in knot.places else ("before",)
    lengths = []
    for name in (*names, "after"):
        with under(name):
            lengths.append(parse_length(typed.text(name) or ""))
    *before, after = lengths
    with under("after"):
        made = learn(knot, before, after)
    laps_there = shop.lap or {}
    key = written_key(knot, practice.knots, laps_there)
    return {
        "key": key,
        "lap": made.lap,
        "before": " + ".join(piece.plain for piece in before),
        "after": after.plain,
        "was": str(laps_there.get(key, "")),
        "joint": len(before) > 1,
    }
