"""How the joints of tapers in print reflect: a share in, how many tapers stay under it out."""

from functools import cache
from itertools import pairwise
from typing import NamedTuple

from tagend.cards.leader.passing import passing, turned_back
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.materials import load_materials
from tagend.cards.practice.printed_tapers import PrintedTaper, printed_tapers


class StayUnder(NamedTuple):
    """How many tapers in print, of all whose diameters are known: 6 of 8."""

    tapers: int
    of: int


def stay_under(share: float) -> StayUnder:
    """Return of how many tapers in print every joint reflects less than a share of the amplitude.

    Either way: a step up to a thicker strand reflects as a step down does.
    """
    printed = _printed()
    return StayUnder(sum(most < share for most in printed), len(printed))


@cache
def _printed() -> tuple[float, ...]:
    """Return the share that the worst joint of each taper in print reflects."""
    return tuple(map(most_reflected, printed_tapers()))


def most_reflected(taper: PrintedTaper) -> float:
    """Return the share of amplitude that the worst joint of a taper reflects, from 0 to 1."""
    nylon = next(material for material in load_materials() if material.kind == "nylon")
    meetings = (
        Meeting(upper=nylon, upper_mm=above.mm, lower=nylon, lower_mm=below.mm)
        for above, below in pairwise(taper.diameters)
    )
    turned = (turned_back(passing(meeting)) for meeting in meetings)
    return max(share.high for share in turned if share)
