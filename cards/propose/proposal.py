"""The best tapers as recipes: a wish and the line there is in, a few proposals out."""

from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.units import parse_span
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.asked_piece import AskedPiece
from tagend.cards.propose.costs import step_costs
from tagend.cards.propose.gap import no_taper
from tagend.cards.propose.lengths import fitted, in_halves
from tagend.cards.propose.links import bought_section
from tagend.cards.propose.net import net_of, nets_below_bought
from tagend.cards.propose.search import Way, best_ways
from tagend.cards.propose.supplies import Supply, supplies_for
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.layouts.base.faults import refused

PROPOSED = 3
_LOOKED_AT = 12  # the best by their joints, of which those with fewer findings come first


class Proposal(Struct, frozen=True):
    """One taper, and the strand that each of its sections is cut from."""

    recipe: Recipe
    strands: tuple[Supply, ...]


def propose(
    wish: Wish, strands: Sequence[Supply], practice: Practice, name: str
) -> tuple[Proposal, ...]:
    """Return the best tapers, those with fewer findings first; no two take the same strands.

    Raises `Refused` where there is none, with the strand that is missing or too short.
    """
    if wish.butt.mm <= wish.tippet.diameter.mm:
        raise refused(
            f"a butt of {wish.butt.plain} is no thicker than the tippet", "write a thicker butt"
        )
    sighters = _cut_from(wish.sighter, wish, strands, practice)
    guards = _cut_from(wish.guard, wish, strands, practice)
    net = net_of(wish, strands, practice, sighters, guards)
    found = best_ways(nets_below_bought(net), step_costs(net), _LOOKED_AT)
    if not found:
        raise no_taper(wish, strands, practice, sighters[0], guards[0])
    changes = found[0].cost.changes  # a taper that changes its material once more is no choice
    proposals = [_proposal(way, name) for way in found if way.cost.changes == changes]
    return tuple(sorted(proposals, key=lambda each: _findings(each, practice))[:PROPOSED])


def _findings(proposal: Proposal, practice: Practice) -> int:
    """Count what the audit advises against; notes are no advice."""
    found = audit(work_out(proposal.recipe, practice), practice)
    return sum(finding.severity != "note" for finding in found)


def _cut_from(
    piece: AskedPiece | None, wish: Wish, strands: Sequence[Supply], practice: Practice
) -> Sequence[Supply | None]:
    """Return what the piece may be cut from, nearest to the tippet first; None if none is asked."""
    if piece is None:
        return (None,)
    found = supplies_for(piece, strands, practice)
    if not found:
        size = f"{piece.diameter.plain} " if piece.diameter else ""
        line = size + piece.material
        raise refused(f"there is no {line} for the {piece.part}", "buy a spool of it")
    tippet_mm = wish.tippet.diameter.mm
    nearest = sorted(found, key=lambda strand: _off(strand.diameter.mm - tippet_mm))
    long = [s for s in nearest if s.left_mm is None or s.left_mm > piece.length.mm]
    return long or nearest[:1]  # which has too little, as the refusal will say


def _off(more_mm: Fraction) -> tuple[bool, Fraction]:
    """Return how far a strand is off the tippet; a thinner one comes last."""
    return more_mm <= -PRINTED_MM, abs(more_mm)


def _proposal(way: Way, name: str) -> Proposal:
    net, plan, places = way.net, way.plan, way.strands
    wish, tape, ending = net.wish, net.tape, net.endings[places[-1] - net.body]
    rooms = net.rooms(places)
    lengths = in_halves(plan, fitted(plan, rooms), rooms, tape.foot)
    rests = (tape.rest_mm, *[Fraction(0)] * (len(places) - 1))
    spelled = [tape.spelled(each, rest) for each, rest in zip(lengths, rests, strict=True)]
    strands = tuple(net.strands[place] for place in places)
    rows = [
        (Section(parse_span(length), strand.diameter, strand.material, strand.strength, part=part),
         strand)
        for length, strand, part in zip(spelled, strands, plan.parts, strict=True)
    ]  # fmt: skip
    rows = [
        *_asked(wish.bought, net.bought),
        *rows[:-1],
        *_asked(wish.sighter, ending.sighter),
        rows[-1],
        *_asked(wish.guard, ending.guard),
    ]
    sections = tuple(section for section, _ in rows)
    recipe = Recipe(name, sections, total=wish.total, line_tip=wish.line_tip)
    return Proposal(recipe, tuple(strand for _, strand in rows))


def _asked(piece: AskedPiece | None, strand: Supply | None) -> Iterator[tuple[Section, Supply]]:
    """Yield the section of a piece whose length is asked for."""
    if piece is None or strand is None:
        return
    if piece.part == "butt":
        yield bought_section(piece), strand
        return
    section = Section(
        length=parse_span(piece.length.plain),
        diameter=strand.diameter,
        material=strand.material,
        strength=strand.strength,
        part=piece.part,
    )
    yield section, strand
