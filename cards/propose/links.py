"""How one strand hangs below another: supplies in; what knots take, or that none holds, out."""

from collections.abc import Sequence
from itertools import pairwise

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.units import parse_span
from tagend.cards.leader.allowance import joint_allowances, round_up
from tagend.cards.leader.choosing import chosen_joint
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.asked_piece import AskedPiece
from tagend.cards.propose.supplies import Supply, meeting_of
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Recipe, Section

# What a knot takes does not depend on it, but on its unit: it is rounded to the marks of a tape.
_SOME_LENGTH = {"in": parse_span("1 ft"), "cm": parse_span("30 cm")}

Takes = tuple[Fraction, Fraction]  # mm of the strand above and of the one below
Chain = Sequence[Supply]  # two strands, and the sighter between them if it comes there


class Links(Struct, frozen=True):
    """The knots between strands, and at the ends of a leader."""

    wish: Wish
    practice: Practice
    unit: ShownUnit
    cut_mm: Fraction  # what knots take and cuts are rounded up to

    def allows(self, upper: Supply, lower: Supply) -> bool:
        """Whether the step between two strands is small enough."""
        return self.wish.step.allows(meeting_of(upper, lower, self.practice))

    def takes(self, chain: Chain) -> Takes | None:
        """Return what the knots take of both ends; None where the sighter has too little line."""
        knots = [self.knot(*pair) for pair in pairwise(chain)]
        asked = self.wish.sighter if len(chain) > 2 else None
        if asked and not self._enough(chain[1], asked.length.mm, knots[0][1] + knots[1][0]):
            return None
        return knots[0][0], knots[-1][1]

    def at_ends(self, first: Supply, last: Supply) -> Takes:
        """Return what the knot at the butt takes of the first strand, and the fly's of the last."""
        return work_out(recipe_of(first, last, unit=self.unit), self.practice).folds_mm

    def holds_guard(self, tippet: Supply, guard: Supply, length_mm: Fraction) -> bool:
        """Whether the guard's spool has enough for the guard below this tippet."""
        knots_mm = self.knot(tippet, guard, is_guard=True)[1] + self.at_ends(tippet, guard)[1]
        return self._enough(guard, length_mm, knots_mm)

    def knot(self, upper: Supply, lower: Supply, *, is_guard: bool = False) -> Takes:
        """Return what the joint between two strands takes of both."""
        meeting = meeting_of(upper, lower, self.practice)
        joint = chosen_joint(meeting, self.practice, is_guard=is_guard)
        above, below = joint_allowances(joint, self.practice, self.cut_mm)
        return above.takes_mm, below.takes_mm

    def _enough(self, strand: Supply, length_mm: Fraction, knots_mm: Fraction) -> bool:
        cut_mm = round_up(length_mm + knots_mm, self.cut_mm)
        return strand.left_mm is None or cut_mm <= strand.left_mm


def recipe_of(*strands: Supply, unit: ShownUnit = "in") -> Recipe:
    """Return strands as a leader of some length."""
    some = _SOME_LENGTH["in" if unit == "in" else "cm"]
    return Recipe("", tuple(Section(some, s.diameter, s.material) for s in strands))


def bought_section(piece: AskedPiece) -> Section:
    """Return a bought butt as a section of a recipe."""
    assert piece.diameter is not None
    return Section(
        length=parse_span(piece.length.plain),
        diameter=piece.diameter,
        material=piece.material,
        strength=piece.strength,
        part=piece.part,
        tapers_to=piece.tapers_to,
        bought=True,
    )


def lost_mm(piece: AskedPiece, below: Supply, practice: Practice) -> Fraction:
    """Return what a bought butt loses to the knots at its two ends."""
    recipe = recipe_of(below)
    whole = Recipe("", (bought_section(piece), *recipe.sections))
    return work_out(whole, practice).pieces[0].taken_mm
