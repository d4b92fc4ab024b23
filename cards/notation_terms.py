"""The words of a code's text: what writing and reading one have in common."""

from typing import NamedTuple

from cards.knots import Knots
from cards.materials import Materials
from cards.quantity_code import Units
from cards.recipe import Part

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
