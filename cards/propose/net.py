"""Which strand may hang below which, and what knots take: a wish and strands in, a net out."""

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import product

from cfractions import Fraction
from msgspec import Struct, field
from msgspec.structs import replace

from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.links import Links, Takes, lost_mm
from tagend.cards.propose.supplies import Supply, fullest, is_near, once
from tagend.cards.propose.tape import Tape, tape_for
from tagend.cards.propose.wish import Wish

# Two strands by their places, of which one hangs below the other; None stands beyond an end.
Places = tuple[int | None, int | None]

_NONE = Fraction(0)


class Ending(Struct, frozen=True):
    """How a leader may end: the tippet, and what is asked for above and below it."""

    tippet: Supply
    sighter: Supply | None = None
    guard: Supply | None = None


class Net(Struct, frozen=True, kw_only=True):
    """The strands that a taper may take, thickest first, and how they may follow each other."""

    wish: Wish
    tape: Tape
    links: Links
    bought: Supply | None
    strands: tuple[Supply, ...]  # those of the body, and behind them the tippet of each ending
    endings: tuple[Ending, ...]
    starts: tuple[int, ...]
    below: tuple[tuple[int, ...], ...]  # the strands that may hang below each
    endless: bool = False  # has every spool enough?
    known: dict[Places, Takes | None] = field(default_factory=dict)  # what knots take, once asked

    @property
    def body(self) -> int:
        """The strands above the tippet."""
        return len(self.strands) - len(self.endings)

    @property
    def fewest(self) -> int:
        """The knots that steps as big as they may be make."""
        return self.wish.step.knots(self.wish.butt.mm, self.wish.tippet.diameter.mm)

    @property
    def knots_beside(self) -> int:
        """The knots of a taper that are not between two of its own strands."""
        return sum(piece is not None for piece in (self.wish.bought, self.wish.sighter))

    def ending(self, place: int) -> Ending | None:
        """Return how a leader ends with this strand; None of the body."""
        return self.endings[place - self.body] if place >= self.body else None

    def chain(self, above: int | None, place: int) -> list[Supply]:
        """Return a strand below another, or below the bought butt, the sighter between them."""
        ending = self.ending(place)
        upper = self.bought if above is None else self.strands[above]
        between = ending.sighter if ending else None
        return [strand for strand in (upper, between, self.strands[place]) if strand]

    def room(self, above: int | None, place: int, below: int | None) -> int:
        """Return the longest piece, in marks, of a strand between two others, or at an end.

        It is negative where the sighter beside it has too little line.
        """
        over, under = self._takes(above, place), self._takes(place, below)
        if over is None or under is None:
            return -1
        rest_mm = self.tape.rest_mm if above is None else _NONE
        left_mm = None if self.endless else self.strands[place].left_mm
        return self.tape.room(left_mm, over[1] + under[0] + rest_mm)

    def rooms(self, path: Sequence[int], *, whole: bool = True) -> list[int]:
        """Return the longest piece of each strand, in marks; without the last until it is whole."""
        around = zip([None, *path], path, [*path[1:], *[None] * whole], strict=False)
        return [self.room(*places) for places in around]

    def _takes(self, above: int | None, below: int | None) -> Takes | None:
        """Return what the knots between two places take of both; None of too short a sighter."""
        if (above, below) not in self.known:
            self.known[above, below] = self._worked_out(above, below)
        return self.known[above, below]

    def _worked_out(self, above: int | None, below: int | None) -> Takes | None:
        links, strands = self.links, self.strands
        if below is None:
            assert above is not None
            ending = self.ending(above)
            if ending and ending.guard:
                return links.knot(strands[above], ending.guard, is_guard=True)
            return links.at_ends(strands[0], strands[above])[1], _NONE
        chain = self.chain(above, below)
        if len(chain) == 1:
            return _NONE, links.at_ends(chain[0], strands[-1])[0]
        return links.takes(chain)


def net_of(
    wish: Wish,
    strands: Sequence[Supply],
    practice: Practice,
    sighters: Sequence[Supply | None] = (None,),
    guards: Sequence[Supply | None] = (None,),
) -> Net:
    """Return the strands from the butt to the tippet, and every step that is small enough.

    A spool that may give the sighter gives nothing else.
    """
    tape = tape_for(wish.total, wish.asked_mm, practice)
    links = Links(wish, practice, tape.unit, tape.cut_mm)
    drawn = [s for s in strands if practice.materials.find(s.material).drawn and s not in sighters]
    body = fullest([strand for strand in drawn if _is_of_body(strand, wish)])
    tippets = fullest([strand for strand in drawn if _is_tippet(strand, wish)])
    ends = [(tippet, guard) for tippet in tippets for guard in _guards(tippet, guards, links)]
    allows, falls = once(links.allows), once(_falls)
    endings = tuple(
        Ending(tippet, sighter, guard)
        for (tippet, guard), sighter in product(ends, sighters)
        if sighter is None or (not _falls(tippet, sighter) and allows(sighter, tippet))
    )
    net = Net(
        wish=wish,
        tape=tape,
        links=links,
        bought=_bought(wish),
        strands=(*body, *(ending.tippet for ending in endings)),
        endings=endings,
        starts=(),
        below=(),
    )
    places = range(len(net.strands))

    def may_follow(above: int | None) -> tuple[int, ...]:
        lowest = 0 if above is None else above + 1
        chains = ((at, net.chain(above, at)) for at in places[lowest:])
        return tuple(at for at, c in chains if allows(c[0], c[1]) and falls(c[0], c[-1]))

    starts = (
        may_follow(None)
        if net.bought
        else tuple(at for at, strand in enumerate(body) if is_near(strand.diameter, wish.butt))
    )
    return replace(
        net, starts=starts, below=tuple(may_follow(at) if at < len(body) else () for at in places)
    )


def nets_below_bought(net: Net) -> list[Net]:
    """Return the net once for all starts below which a bought butt loses as much to its knots."""
    wish, practice = net.wish, net.links.practice
    if (bought := wish.bought) is None:
        return [net]
    lost = cache(lambda strand: lost_mm(bought, strand, practice))
    alike: dict[Fraction, list[int]] = {}
    for start in net.starts:
        alike.setdefault(lost(net.chain(None, start)[1]), []).append(start)
    return [
        replace(net, tape=tape_for(wish.total, wish.asked_mm - mm, practice), starts=tuple(starts))
        for mm, starts in alike.items()
    ]


def _guards(
    tippet: Supply, guards: Sequence[Supply | None], links: Links
) -> Iterator[Supply | None]:
    """Yield the first guard that has enough line, and those behind it that leave more tippet."""
    least_mm: Fraction | None = None
    for guard in guards:
        asked = links.wish.guard
        if guard is None or asked is None:
            yield None
            return
        takes_mm = links.knot(tippet, guard, is_guard=True)[0]
        less = least_mm is None or takes_mm < least_mm
        if less and links.holds_guard(tippet, guard, asked.length.mm):
            yield guard
            if tippet.left_mm is None:
                return
            least_mm = takes_mm


def _bought(wish: Wish) -> Supply | None:
    """Return a bought butt as the strand at its fly end."""
    if wish.bought is None:
        return None
    return Supply(wish.bought.material, wish.butt, wish.bought.strength, "bought")


def _falls(upper: Supply, lower: Supply) -> bool:
    """Whether a strand is thinner than the one above by more than print rounds off."""
    return upper.diameter.mm - lower.diameter.mm >= PRINTED_MM


def _is_of_body(strand: Supply, wish: Wish) -> bool:
    is_thicker = strand.diameter.mm - wish.tippet.diameter.mm >= PRINTED_MM
    return is_thicker and wish.material in (None, strand.material)


def _is_tippet(strand: Supply, wish: Wish) -> bool:
    return (
        is_near(strand.diameter, wish.tippet.diameter)
        and wish.tippet_material in (None, strand.material)
        and wish.tippet.strength in (None, strand.strength)
    )
