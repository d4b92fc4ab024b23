"""Leaders of any lengths side by side, for laws about drawings: hypothesis strategies."""

from hypothesis import assume
from hypothesis import strategies as st

from tagend.cards.leader.leader import Leader
from tagend.cards.recipe.recipe import Section
from tests.strategies import butt_ends, fly_ends, joint_knots, materials
from tests.tieable import is_tieable
from tests.written import leader, recipe, section


@st.composite
def _sections(draw: st.DrawFn, unit: str, *, last: bool) -> Section:
    most = 72 if unit == "in" else 180
    length = draw(st.integers(1, most))
    more = draw(st.sampled_from([0, 0, 0, draw(st.integers(1, 9))]))
    thou = st.integers(4, 40).map("0.0{:02} in".format)
    return section(
        f"{length} to {length + more} {unit}" if more else f"{length} {unit}",
        draw(thou),
        draw(materials),
        knot=None if last else draw(st.none() | joint_knots),
        part=draw(st.sampled_from([None, "bite guard"])) if last else None,
        dropper=None if last else draw(st.sampled_from([None, None, "6 in"])),
        tapers_to=draw(st.none() | thou),
    )


@st.composite
def leaders(draw: st.DrawFn) -> Leader:
    """Return a leader of 1 to 12 sections, each from 1 to 72 in whatever stands beside it."""
    unit = draw(st.sampled_from(["in", "cm"]))
    above = draw(st.lists(_sections(unit, last=False), max_size=11))
    last = draw(_sections(unit, last=True))
    of = leader(recipe(*above, last, butt=draw(butt_ends), fly=draw(fly_ends)))
    assume(is_tieable(of))  # what is bought may be shorter than its knots take
    return of
