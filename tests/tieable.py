"""Leaders that people tie, for laws about paper: a seed in, a leader that can be tied out."""

from random import Random

from hypothesis import strategies as st

from tagend.cards.leader.leader import Leader, check_tieable
from tagend.layouts.base.faults import Refused
from tests.plausible import plausible_recipe
from tests.written import leader

seeds = st.integers(0, 1_000_000)
counts = st.none() | st.integers(1, 30)  # of sections; None is as many as is likely


def tieable(seed: int, sections: int | None = None) -> Leader:
    """Return the first leader of a seed whose knots leave something of every piece."""
    random = Random(seed)
    while True:
        found = leader(plausible_recipe(random, sections))
        if is_tieable(found):
            return found


def is_tieable(of: Leader) -> bool:
    try:
        check_tieable(of)
    except Refused:
        return False
    return True
