"""How a knot is told of in one language: a knot in; its steps, seat and caution out.

What a person's shop file says of a knot stands as it is written there, in every language.
"""

from dataclasses import dataclass

from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knot
from tagend.cards.words.language import Wording, language_file


@dataclass(frozen=True, slots=True)
class KnotWords:
    """What is said of a knot; the steps have their turns still to be counted in."""

    steps: tuple[str, ...]
    seat: str
    caution: str | None


def knot_words(knot: Knot, wording: Wording) -> KnotWords:
    """Return what is said of a knot, in English where the language has no words for it."""
    ours = load_knots().rows
    common = next((row for row in ours if row.name == knot.name), knot)
    there = language_file(wording.language)["knots"].get(knot.name, {})
    steps, seat, caution = knot.steps, knot.seat, knot.caution
    if knot.steps == common.steps:
        steps = tuple(there.get("steps", steps))
    if knot.seat == common.seat:
        seat = there.get("seat", seat)
    if knot.caution == common.caution:
        caution = there.get("caution", caution)
    return KnotWords(steps, seat, caution)
