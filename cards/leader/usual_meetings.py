"""How strands meet in many leaders: a meeting by its name in; its strands and knots out."""

from collections.abc import Mapping

from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Meets, Practice, end_of_meeting, serving

# Of what each strand is, and its thousandths.
_STRANDS: Mapping[Meets, tuple[tuple[str, int], tuple[str, int]]] = {
    "same line": (("nylon", 12), ("nylon", 10)),
    "nylon to fluorocarbon": (("nylon", 12), ("fluorocarbon", 10)),
    "big step": (("nylon", 17), ("nylon", 10)),
    "wire": (("nylon", 15), ("wire", 12)),
    "bought butt": (("braided thread", 30), ("nylon", 17)),
    "butt": (("nylon", 21), ("nylon", 21)),
    "fly": (("nylon", 8), ("nylon", 8)),
}


def usual_meeting(meets: Meets, practice: Practice) -> Meeting:
    """Return a pair of strands that meet so."""
    (upper, upper_thou), (lower, lower_thou) = _STRANDS[meets]
    return Meeting(
        upper=practice.materials.find(upper),
        upper_mm=upper_thou * DIAMETER_MM["thou"],
        lower=practice.materials.find(lower),
        lower_mm=lower_thou * DIAMETER_MM["thou"],
    )


def fitting(meets: Meets, practice: Practice) -> list[Knot]:
    """Return the knots that suit such a pair, in the order of the knots file."""
    meeting = usual_meeting(meets, practice)
    knots = serving(practice.knots, end_of_meeting(meets))
    return [knot for knot in knots if not (untieable(knot, meeting) or unfit(knot, meeting))]
