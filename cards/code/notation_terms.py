"""The words of a code's text: what writing and reading one have in common."""

from typing import NamedTuple

from tagend.cards.code.quantity_code import Units
from tagend.cards.practice.knots import Knots
from tagend.cards.practice.materials import Materials
from tagend.cards.recipe.recipe import Part

PARTS: dict[str, Part] = {
    "BUTT": "butt",
    "TAPER": "taper",
    "TIPPET": "tippet",
    "GUARD": "bite guard",
    "SIGHTER": "sighter",
}
PART_WRITTEN = {part: word for word, part in PARTS.items()}
BARE_END = "NONE"  # longer than any code of a knot


class Terms(NamedTuple):
    """What the fields of one code go by."""

    units: Units
    knots: Knots
    materials: Materials
