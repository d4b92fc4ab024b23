"""The best tapers as recipes: a wish and the line there is in, a few proposals out."""

from collections.abc import Sequence
from dataclasses import dataclass

from tagend.cards.base.units import parse_span
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.gap import no_taper
from tagend.cards.propose.lengths import Plans, fitted
from tagend.cards.propose.net import knot_cost, net_of
from tagend.cards.propose.rooms import Rooms, rooms_of
from tagend.cards.propose.search import best_paths
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.tape import tape_for
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Part, Recipe, Section
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
    tape, net = tape_for(wish.total, practice), net_of(wish, strands)
    rooms, plans = rooms_of(net, tape, practice), Plans(wish.shares, tape)
    paths = best_paths(net, rooms, plans, PROPOSED)
    if not paths:
        raise no_taper(wish, net, rooms, plans)
    called = name or f"{wish.total.plain}, {wish.butt.plain} to {wish.tippet.diameter.plain}"
    worst = paths[0].cost + _WORSE_BY * knot_cost(net)
    return tuple(
        _proposal(path.strands, wish, rooms, plans, called) for path in paths if path.cost <= worst
    )


def _proposal(path: tuple[int, ...], wish: Wish, rooms: Rooms, plans: Plans, name: str) -> Proposal:
    plan = plans.of(len(path))
    assert plan is not None
    strands = tuple(rooms.strands[place] for place in path)
    lengths = fitted(plan, rooms.along(path))
    sections = tuple(
        _section(rooms.tape.spelled(length), strand, part)
        for length, strand, part in zip(lengths, strands, plan.parts, strict=True)
    )
    return Proposal(Recipe(name, sections, total=wish.total, line_tip=wish.line_tip), strands)


def _section(length: str, strand: Supply, part: Part) -> Section:
    return Section(parse_span(length), strand.diameter, strand.material, strand.strength, part=part)
