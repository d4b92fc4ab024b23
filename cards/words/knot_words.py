"""How a knot is told of in one language: a knot in; the same with its words in that language out.

What a person's shop file says of a knot stands as it is written there, in every language.
"""

from msgspec.structs import replace

from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import USUAL_ROLES, Knot
from tagend.cards.words.language import Wording, language_file


def knot_in(wording: Wording, knot: Knot) -> Knot:
    """Return a knot with its roles, steps, seat and caution in a language, or else in English.

    The steps have their turns still to be counted in.
    """
    common = next((row for row in load_knots().rows if row.name == knot.name), knot)
    there = language_file(wording.language)["knots"].get(knot.name, {})
    steps, seat, caution = knot.steps, knot.seat, knot.caution
    if steps == common.steps:
        steps = tuple(there.get("steps", steps))
    if seat == common.seat:
        seat = there.get("seat", seat)
    if caution == common.caution:
        caution = there.get("caution", caution)
    roles = knot.roles
    if "joint" in knot.places and roles == USUAL_ROLES:
        roles = wording.say("heavy_strand"), wording.say("light_strand")
    elif roles == common.roles:
        heavy, light = there.get("roles", roles)
        roles = heavy, light
    return replace(knot, roles=roles, steps=steps, seat=seat, caution=caution)
