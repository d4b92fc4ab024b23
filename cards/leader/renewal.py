"""New pieces on the water: a leader in; what each costs the one above, and what to carry, out."""

from collections.abc import Iterator

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules_of_thumb import rules_of_thumb


class Renewal(Struct, frozen=True, kw_only=True):
    """What it costs the section above a piece to tie that piece anew."""

    piece: Piece
    above: Piece
    joint: Joint
    cost_mm: Fraction  # each time
    number: int | None  # how often the section above stands it; None without end

    @property
    def rest_mm(self) -> Fraction:
        """What is left of the section above when it stands no more."""
        return self.above.finished.low_mm - (self.number or 0) * self.cost_mm


class Carried(Struct, frozen=True):
    """So many pieces of one section."""

    piece: Piece
    count: int

    @property
    def mm(self) -> Fraction:
        """The line that they are cut from."""
        return self.count * self.piece.cut_mm


def renewals(leader: Leader, practice: Practice) -> tuple[Renewal, ...]:
    """Return what a new tippet costs, and each new piece below it, where something hangs above."""
    places = range(leader.tippet.place, len(leader.pieces) + 1)
    return tuple(renewal(leader, place, practice) for place in places if place > 1)


def renewal(leader: Leader, place: int, practice: Practice) -> Renewal:
    """Return what a new section at a place costs the one above it."""
    above = leader.pieces[place - 2]
    cost, _ = retied_mm(leader, place - 1)
    room = above.finished.low_mm - worn_mm(above, leader, practice)
    return Renewal(
        piece=leader.pieces[place - 1],
        above=above,
        joint=leader.joints[place - 2],
        cost_mm=cost,
        number=int(room // cost) if cost else None,
    )


def retied_mm(leader: Leader, place: int) -> tuple[Fraction, Fraction]:
    """Return what it costs the sections above and below to tie the joint below a place again.

    The old knot is cut off at its edge, and the new one takes what the old one took; a dropper is
    left long again. Where each side has a knot of its own, to a ring or as a loop, the one that
    stays is not touched.
    """
    if leader.joints[place - 1].knot.ties:
        return Fraction(0), Fraction(0)
    above, below = leader.takes(place)
    return above + leader.pieces[place - 1].dropper_mm, below


def worn_mm(piece: Piece, leader: Leader, practice: Practice) -> Fraction:
    """Return the finished length below which a section is spent.

    That is by rule of thumb, but no less than its knots need, nor than the published least of a
    class tippet where the recipe is for a record. A whole section is never spent.
    """
    thumb, whole = rules_of_thumb(), piece.finished.low_mm
    least = [thumb.worn_share * whole, thumb.worn_length.mm, piece.barrels_mm]
    record = practice.rules["class tippet"]
    if leader.recipe.record_lengths and record.severity != "off" and piece is leader.tippet:
        least += record.limits
    return min(whole, max(least))


def carried(leader: Leader, place: int, count: int, practice: Practice) -> tuple[Carried, ...]:
    """Return the pieces to tie a section anew so often, from the butt to the fly.

    What hangs below it is lost with it. Each time the section above is spent it comes anew too,
    and so on upwards.
    """
    below = [Carried(piece, count) for piece in leader.pieces[place:]]
    return (*reversed(list(_upwards(leader, place, count, practice))), *below)


def _upwards(leader: Leader, place: int, count: int, practice: Practice) -> Iterator[Carried]:
    while count:
        yield Carried(leader.pieces[place - 1], count)
        if place == 1:
            return
        number = renewal(leader, place, practice).number
        count = 0 if number is None else count // (number + 1)
        place -= 1
