"""Why no taper fits: the net of a wish and its strands in; what to buy or to change, out."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import count, pairwise

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.propose.lengths import plan_of
from tagend.cards.propose.net import Net
from tagend.cards.propose.search import best_ways
from tagend.cards.propose.supplies import Supply, named
from tagend.cards.propose.wish import Wish
from tagend.layouts.base.faults import Fault, Refused, refused


def no_taper(net: Net) -> Refused:
    """Return the refusal of a wish that no taper fulfils, with all that one reason explains."""
    wish = net.wish
    if not net.starts:
        return _no_butt(net)
    if not net.ends:
        strength = wish.tippet.strength.plain if wish.tippet.strength else None
        return _no_end("tippet", wish.tippet.diameter.plain, wish.tippet_material, strength)
    if gaps := list(_gaps(net)):
        return Refused(*(_gap(above, below, wish) for above, below in gaps))
    endless = replace(net, plenty=frozenset(range(len(net.strands))))
    ways = best_ways(endless, 1)
    if not ways:
        return refused(
            f"{wish.total.plain} has no room for the pieces that steps of this size ask for",
            "allow a larger step, or write a longer total",
        )
    return Refused(*_short(ways[0].strands, net))


def _no_butt(net: Net) -> Refused:
    butt = net.wish.butt
    body = [strand for place, strand in enumerate(net.strands) if place not in net.ends]
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
        above = net.strands[max(reached)]
        if place not in reached and above.diameter.mm - strand.diameter.mm > net.wish.step_mm:
            yield above, strand
            reached.add(place)
        if place in reached:
            reached.update(net.below[place])


def _gap(above: Supply, below: Supply, wish: Wish) -> Fault:
    unit: ShownUnit = "mm" if wish.butt.unit == "mm" else "in"
    grid = Fraction(1, 100) if unit == "mm" else DIAMETER_MM["thou"]
    between = missing(above.diameter.mm, below.diameter.mm, wish.step_mm, grid)
    buy = " and ".join(thickness(mm, unit) for mm in between)
    return Fault(
        "",
        f"no strand leads from {named(above)} to {named(below)} in steps of "
        f"{thickness(wish.step_mm, unit)} or less",
        f"buy {buy} {above.material}, or allow a larger step",
    )


def missing(
    above_mm: Fraction, below_mm: Fraction, step_mm: Fraction, grid_mm: Fraction
) -> list[Fraction]:
    """Return the fewest diameters, on a grid that is sold, that bridge two in even steps."""
    drop_mm = above_mm - below_mm
    fewest = math.ceil(drop_mm / step_mm) - 1
    evenly = (
        [above_mm - drop_mm * place / (strands + 1) for place in range(1, strands + 1)]
        for strands in count(fewest)
    )
    ways = ([round(mm / grid_mm) * grid_mm for mm in sizes] for sizes in evenly)
    return next(
        sizes
        for sizes in ways
        if all(a - b <= step_mm for a, b in pairwise([above_mm, *sizes, below_mm]))
    )


def _short(strands: Sequence[int], net: Net) -> Iterator[Fault]:
    """Yield the spools of the best taper that have not line enough for it."""
    plan = plan_of(len(strands), net.wish.shares, net.tape)
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
