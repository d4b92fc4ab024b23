"""Why no taper fits: the net of a wish and its strands in; what to buy or to change, out."""

from collections.abc import Iterator, Sequence
from itertools import count, pairwise

from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.costs import step_costs
from tagend.cards.propose.lengths import plan_of
from tagend.cards.propose.net import Net, net_of
from tagend.cards.propose.search import best_ways
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import Supply, is_near, meeting_of, named
from tagend.cards.propose.wish import Wish
from tagend.layouts.base.faults import Fault, Refused, refused


def no_taper(
    wish: Wish,
    strands: Sequence[Supply],
    practice: Practice,
    sighter: Supply | None,
    guard: Supply | None,
) -> Refused:
    """Return the refusal of a wish that no taper fulfils, with all that one reason explains."""
    tippets = [s for s in strands if is_near(s.diameter, wish.tippet.diameter)]
    if not net_of(wish, tippets, practice).endings:
        strength = wish.tippet.strength.plain if wish.tippet.strength else None
        return _no_end("tippet", wish.tippet.diameter.plain, wish.tippet_material, strength)
    if guard and not net_of(wish, tippets, practice, guards=(guard,)).endings:
        return refused(
            f"{named(guard)} has no line for the bite guard beside its knots",
            "buy a spool of it, or write a shorter bite guard",
        )
    net = net_of(wish, strands, practice, (sighter,), (guard,))
    if sighter and not net.endings:
        return _no_sighter(sighter, wish)
    if not net.starts and not net.bought:
        return _no_butt(net)
    if gaps := list(_gaps(net)):
        return Refused(*(_gap(above, below, net) for above, below in gaps))
    ways = best_ways([replace(net, endless=True)], step_costs(net), 1)
    if ways:
        return Refused(*_short(ways[0].strands, net))
    if sighter:
        return _no_sighter(sighter, wish)
    return refused(
        f"{wish.total.plain} has no room for the pieces that steps of this size ask for",
        "allow a larger step, or write a longer total",
    )


def _no_sighter(sighter: Supply, wish: Wish) -> Refused:
    """Return the refusal where the sighter is in the way, or has too little line."""
    tippet = wish.tippet.diameter
    return refused(
        f"{named(sighter)} does not fit above {tippet.plain}, or has too little line",
        "buy a sighter a little thicker than the tippet, or write a longer total",
    )


def _no_butt(net: Net) -> Refused:
    butt = net.wish.butt
    body = net.strands[: net.body]
    near = min(body, key=lambda strand: abs(strand.diameter.mm - butt.mm), default=None)
    instead = f", or begin with {named(near)}" if near else ""
    return _no_end("butt", butt.plain, net.wish.material, instead=instead)


def _no_end(end: str, *words: str | None, instead: str = "") -> Refused:
    line = " ".join(filter(None, words))
    return refused(f"there is no {line} for the {end}", f"buy a spool of it{instead}")


def _gaps(net: Net) -> Iterator[tuple[Supply, Supply]]:
    """Yield the strands above and below each gap that no step of this size crosses."""
    reached = set(net.starts)
    for place, strand in enumerate(net.strands):
        above = net.strands[max(reached)] if reached else net.bought
        if above is None or (net.wish.sighter and place >= net.body):
            continue
        falls = above.diameter.mm > strand.diameter.mm
        meeting = meeting_of(above, strand, net.links.practice)
        if place not in reached and falls and not net.wish.step.allows(meeting):
            yield above, strand
            reached.add(place)
        if place in reached:
            reached.update(net.below[place])


def _gap(above: Supply, below: Supply, net: Net) -> Fault:
    wish, find = net.wish, net.links.practice.materials.find
    unit: ShownUnit = "mm" if wish.butt.unit == "mm" else "in"
    grid = Fraction(1, 100) if unit == "mm" else DIAMETER_MM["thou"]
    material = find(above.material)
    between = missing(above.diameter.mm, below.diameter.mm, wish.step, material, grid)
    buy = " and ".join(thickness(mm, unit) for mm in between)
    return Fault(
        "",
        f"no strand leads from {named(above)} to {named(below)} in steps of {wish.step.told(unit)}",
        f"buy {buy} {above.material}, or allow a larger step",
    )


def missing(
    above_mm: Fraction, below_mm: Fraction, step: StepLimit, material: Material, grid_mm: Fraction
) -> list[Fraction]:
    """Return the fewest diameters, on a grid that is sold, that bridge two in even steps."""
    evenly = (step.between(above_mm, below_mm, steps) for steps in count(1))
    ways = ([round(mm / grid_mm) * grid_mm for mm in sizes] for sizes in evenly)

    def bridges(sizes: Sequence[Fraction]) -> bool:
        pairs = pairwise([above_mm, *sizes, below_mm])
        return all(step.allows(Meeting(material, a, material, b)) for a, b in pairs)

    return next(sizes for sizes in ways if bridges(sizes))


def _short(strands: Sequence[int], net: Net) -> Iterator[Fault]:
    """Yield the spools of the best taper that have not line enough for it."""
    plan = plan_of(len(strands), net.wish.shares, net.tape, bool(net.bought))
    assert plan is not None
    for place, room, length in zip(strands, net.rooms(strands), plan.lengths, strict=True):
        if room < length:
            spelled = net.tape.spelled(max(room, 0))
            yield Fault(
                "",
                f"{named(net.strands[place])} has line for a piece of {spelled} beside its "
                f"knots, and the best taper takes {net.tape.spelled(length)}",
                "buy a spool of it",
            )
