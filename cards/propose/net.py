"""Which strand may hang below which, and what knots take: a wish and strands in, a net out."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product

from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.links import Links, Takes, lost_mm
from tagend.cards.propose.supplies import Supply, fullest, is_near
from tagend.cards.propose.tape import Tape, tape_for
from tagend.cards.propose.wish import Wish

# Two strands by their places, of which one hangs below the other; None stands beyond an end.
Places = tuple[int | None, int | None]

Step = tuple[Supply, ...]  # two strands, and the sighter between them if it comes there

_NONE = Fraction(0)


@dataclass(frozen=True, slots=True)
class Net:
    """The strands that a taper may take, thickest first, and how they may follow each other."""

    wish: Wish
    tape: Tape
    links: Links
    strands: tuple[Supply, ...]
    body: int  # strands above the tippet; those behind them are tippets
    starts: tuple[int, ...]
    ends: frozenset[int]
    below: tuple[tuple[int, ...], ...]  # the strands that may hang below each
    takes: Mapping[Places, Takes]
    plenty: frozenset[int]  # strands that have enough for the whole leader

    @property
    def fewest(self) -> int:
        """The knots that steps as big as they may be make."""
        return self.wish.step.knots(self.wish.butt.mm, self.wish.tippet.diameter.mm)

    @property
    def knots_beside(self) -> int:
        """The knots of a taper that are not between two of its own strands."""
        return sum(strand is not None for strand in (self.links.bought, self.links.sighter))

    def is_tippet(self, place: int) -> bool:
        """Whether a strand may be the tippet, if its guard's spool has enough; it is no other."""
        return place >= self.body

    def room(self, above: int | None, strand: int, below: int | None) -> int:
        """Return the longest piece, in marks, of a strand between two others, or at an end."""
        if strand in self.plenty:
            return self.tape.total
        knots_mm = self.takes[above, strand][1] + self.takes[strand, below][0]
        rest_mm = self.tape.rest_mm if above is None else _NONE
        return self.tape.room(self.strands[strand].left_mm, knots_mm + rest_mm)

    def rooms(self, path: Sequence[int]) -> list[int]:
        """Return the longest piece of each strand of a whole leader, in marks."""
        around = zip([None, *path], path, [*path[1:], None], strict=False)
        return [self.room(*places) for places in around]


def net_of(
    wish: Wish,
    strands: Sequence[Supply],
    practice: Practice,
    sighter: Supply | None = None,
    guard: Supply | None = None,
    known: dict[Step, Takes | None] | None = None,
) -> Net:
    """Return the strands from the butt to the tippet, and every step that is small enough.

    `known` are steps of other nets of the wish, to which those of this one are added.
    """
    known = {} if known is None else known
    bought = _bought(wish)
    tape = tape_for(wish.total, wish.asked_mm, practice)
    links = Links(wish, practice, tape.unit, tape.cut_mm, bought, sighter, guard)
    drawn = [s for s in strands if practice.materials.find(s.material).drawn and s != sighter]
    body = fullest([strand for strand in drawn if _is_of_body(strand, wish)])
    whole = (*body, *fullest([strand for strand in drawn if _is_tippet(strand, wish)]))
    ends = frozenset(at for at in range(len(body), len(whole)) if links.holds_guard(whole[at]))
    takes: dict[Places, Takes] = {}
    for upper, lower in product(range(len(body)), range(len(whole))):
        if lower > upper and (lower < len(body) or lower in ends):
            step = tuple(links.chain(whole[upper], whole[lower], lower in ends))
            if step not in known:
                known[step] = links.takes(whole[upper], whole[lower], lower in ends)
            if found := known[step]:
                takes[upper, lower] = found
    below = tuple(
        tuple(lower for lower in range(len(whole)) if (upper, lower) in takes)
        for upper in range(len(whole))
    )
    starts = tuple(at for at, strand in enumerate(whole) if _starts(strand, at in ends, links))
    for start, end in product(starts, ends):
        above, under = links.at_ends(whole[start], whole[end])
        takes[None, start], takes[end, None] = (_NONE, above), (under, _NONE)
    net = Net(
        wish=wish,
        tape=tape,
        links=links,
        strands=whole,
        body=len(body),
        starts=starts,
        ends=ends,
        below=below,
        takes=takes,
        plenty=frozenset(),
    )
    return replace(net, plenty=_plenty(net))


def nets_below_bought(net: Net) -> Iterator[Net]:
    """Yield the net once for all starts below which a bought butt loses as much to its knots."""
    wish, links = net.wish, net.links
    if wish.bought is None or links.bought is None:
        yield net
        return
    alike: defaultdict[Fraction, list[int]] = defaultdict(list)
    for start in net.starts:
        below = links.chain(links.bought, net.strands[start], start in net.ends)[1]
        alike[lost_mm(wish.bought, below, links.practice)].append(start)
    for lost, starts in alike.items():
        tape = tape_for(wish.total, wish.asked_mm - lost, links.practice)
        of_them = replace(net, tape=tape, starts=tuple(starts))
        yield replace(of_them, plenty=_plenty(of_them))


def _plenty(net: Net) -> frozenset[int]:
    most_mm = 2 * max((mm for pair in net.takes.values() for mm in pair), default=_NONE)
    rooms = (net.tape.room(s.left_mm, most_mm + net.tape.rest_mm) for s in net.strands)
    return frozenset(place for place, room in enumerate(rooms) if room == net.tape.total)


def _bought(wish: Wish) -> Supply | None:
    """Return a bought butt as the strand at its fly end."""
    if wish.bought is None:
        return None
    return Supply(wish.bought.material, wish.butt, wish.bought.strength, "bought")


def _starts(strand: Supply, at_tippet: bool, links: Links) -> bool:
    if links.bought:
        return links.takes(links.bought, strand, at_tippet) is not None
    return not at_tippet and is_near(strand.diameter, links.wish.butt)


def _is_of_body(strand: Supply, wish: Wish) -> bool:
    is_thicker = strand.diameter.mm - wish.tippet.diameter.mm >= PRINTED_MM
    return is_thicker and wish.material in (None, strand.material)


def _is_tippet(strand: Supply, wish: Wish) -> bool:
    return (
        is_near(strand.diameter, wish.tippet.diameter)
        and wish.tippet_material in (None, strand.material)
        and wish.tippet.strength in (None, strand.strength)
    )
