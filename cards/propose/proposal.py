"""The best tapers as recipes: a wish and the line there is in, a few proposals out."""

from collections.abc import Sequence
from dataclasses import dataclass

from tagend.cards.base.units import parse_span
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.gap import no_taper
from tagend.cards.propose.lengths import fitted, plan_of
from tagend.cards.propose.net import Net, knot_cost, net_of
from tagend.cards.propose.search import best_ways
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.layouts.base.faults import refused

PROPOSED = 3
_WORSE_BY = 5  # knots; our choice: what is worse than the best by more is no choice


@dataclass(frozen=True, slots=True)
class Proposal:
    """One taper, and the strand that each of its sections is cut from."""

    recipe: Recipe
    strands: tuple[Supply, ...]


def propose(
    wish: Wish, strands: Sequence[Supply], practice: Practice, name: str | None = None
) -> tuple[Proposal, ...]:
    """Return the best tapers, the best first; no two take the same strands.

    Raises `Refused` where there is none, with the strand that is missing or too short.
    """
    if wish.butt.mm <= wish.tippet.diameter.mm:
        raise refused(
            f"a butt of {wish.butt.plain} is no thicker than the tippet", "write a thicker butt"
        )
    net = net_of(wish, strands, practice)
    ways = best_ways(net, PROPOSED)
    if not ways:
        raise no_taper(net)
    called = name or f"{wish.total.plain}, {wish.butt.plain} to {wish.tippet.diameter.plain}"
    worst = ways[0].cost + _WORSE_BY * knot_cost(net)
    return tuple(_proposal(way.strands, net, called) for way in ways if way.cost <= worst)


def _proposal(places: tuple[int, ...], net: Net, name: str) -> Proposal:
    plan = plan_of(len(places), net.wish.shares, net.tape)
    assert plan is not None
    strands = tuple(net.strands[place] for place in places)
    lengths = map(net.tape.spelled, fitted(plan, net.rooms(places)))
    sections = tuple(
        Section(parse_span(length), strand.diameter, strand.material, strand.strength, part=part)
        for length, strand, part in zip(lengths, strands, plan.parts, strict=True)
    )
    wish = net.wish
    return Proposal(Recipe(name, sections, total=wish.total, line_tip=wish.line_tip), strands)
