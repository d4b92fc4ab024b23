"""Why no taper fits: a wish and the net of its strands in; what to buy or to change, out."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import count, pairwise

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.propose.lengths import Plans
from tagend.cards.propose.net import Net
from tagend.cards.propose.rooms import Rooms
from tagend.cards.propose.search import best_paths
from tagend.cards.propose.supplies import Supply, named
from tagend.cards.propose.wish import Wish
from tagend.layouts.base.faults import Fault, Refused, refused


def no_taper(wish: Wish, net: Net, rooms: Rooms, plans: Plans) -> Refused:
    """Return the refusal of a wish that no taper fulfils, with all that one reason explains."""
    if not net.starts:
        line = " ".join(filter(None, (wish.butt.plain, wish.material)))
        body = [s for place, s in enumerate(net.strands) if place not in net.ends]
        return _no_end("butt", line, _nearest(body, wish.butt.mm))
    if not net.ends:
        return _no_end("tippet", _tippet_words(wish), None)
    if gaps := list(_gaps(net, wish.step_mm)):
        return Refused(*(_gap(above, below, wish) for above, below in gaps))
    paths = best_paths(net, rooms.without_end(), plans, 1)
    if not paths:
        return refused(
            f"{wish.total.plain} has no room for the pieces that steps of this size ask for",
            "allow a larger step, or write a longer total",
        )
    return Refused(*_short(paths[0].strands, rooms, plans))


def _no_end(end: str, line: str, near: Supply | None) -> Refused:
    instead = f", or begin with {named(near)}" if near else ""
    return refused(f"there is no {line} for the {end}", f"buy a spool of it{instead}")


def _nearest(strands: Sequence[Supply], diameter_mm: Fraction) -> Supply | None:
    return min(strands, key=lambda strand: abs(strand.diameter.mm - diameter_mm), default=None)


def _tippet_words(wish: Wish) -> str:
    tippet = wish.tippet
    strength = tippet.strength.plain if tippet.strength else None
    words = (tippet.diameter.plain, tippet.material or wish.material, strength)
    return " ".join(filter(None, words))


def _gaps(net: Net, step_mm: Fraction) -> Iterator[tuple[Supply, Supply]]:
    """Yield the strands above and below each gap that no step of this size crosses."""
    reached = set(net.starts)
    for place, strand in enumerate(net.strands):
        above = net.strands[max(reached)]
        if place not in reached and above.diameter.mm - strand.diameter.mm > step_mm:
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
    fewest = math.ceil((above_mm - below_mm) / step_mm) - 1
    ways = (_between(above_mm, below_mm, strands, grid_mm) for strands in count(fewest))
    return next(
        sizes
        for sizes in ways
        if all(a - b <= step_mm for a, b in pairwise([above_mm, *sizes, below_mm]))
    )


def _between(
    above_mm: Fraction, below_mm: Fraction, strands: int, grid_mm: Fraction
) -> list[Fraction]:
    step = (above_mm - below_mm) / (strands + 1)
    even = (above_mm - step * place for place in range(1, strands + 1))
    return [round(mm / grid_mm) * grid_mm for mm in even]


def _short(path: tuple[int, ...], rooms: Rooms, plans: Plans) -> Iterator[Fault]:
    """Yield the spools of the best taper that have not line enough for it."""
    plan = plans.of(len(path))
    assert plan is not None
    for place, room, length in zip(path, rooms.along(path), plan.lengths, strict=True):
        if room < length:
            spelled = rooms.tape.spelled(max(room, 0))
            yield Fault(
                "",
                f"{named(rooms.strands[place])} has line for a piece of {spelled} beside its "
                f"knots, and the best taper takes {rooms.tape.spelled(length)}",
                "buy a spool of it",
            )
