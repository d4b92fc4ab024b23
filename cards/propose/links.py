"""How one strand hangs below another: supplies in; what knots take, or that none holds, out."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.units import parse_span
from tagend.cards.leader.allowance import joint_allowances, round_up
from tagend.cards.leader.choosing import joints
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import PRINTED_MM
from tagend.cards.propose.asked_piece import AskedPiece
from tagend.cards.propose.supplies import Supply, meeting_of
from tagend.cards.propose.wish import Wish
from tagend.cards.recipe.recipe import Recipe, Section

# What a knot takes does not depend on it, but on its unit: it is rounded to the marks of a tape.
_SOME_LENGTH = {"in": parse_span("1 ft"), "cm": parse_span("30 cm")}
_NONE = Fraction(0)

Takes = tuple[Fraction, Fraction]  # mm of the strand above and of the one below


@dataclass(frozen=True, slots=True)
class Links:
    """The knots between strands, and beyond the ends: a bought butt, a sighter, a bite guard."""

    wish: Wish
    practice: Practice
    unit: ShownUnit
    cut_mm: Fraction  # what knots take and cuts are rounded up to
    bought: Supply | None = None
    sighter: Supply | None = None
    guard: Supply | None = None

    def chain(self, upper: Supply, lower: Supply, at_tippet: bool) -> list[Supply]:
        """Return both strands with the sighter between them where it belongs there."""
        between = [self.sighter] if at_tippet and self.sighter else []
        return [upper, *between, lower]

    def takes(self, upper: Supply, lower: Supply, at_tippet: bool) -> Takes | None:
        """Return what the knots take of both, or None where a step between them is no good."""
        chain = self.chain(upper, lower, at_tippet)
        falls = upper.diameter.mm - lower.diameter.mm >= PRINTED_MM
        rises = chain[-2].diameter.mm - lower.diameter.mm <= -PRINTED_MM
        meetings = (meeting_of(*pair, self.practice) for pair in pairwise(chain))
        if not falls or rises or not all(map(self.wish.step.allows, meetings)):
            return None
        knots = [self._knot(*pair) for pair in pairwise(chain)]
        asked = self.wish.sighter if len(chain) > 2 else None
        if asked and not self._enough(chain[1], asked.length.mm, knots[0][1] + knots[1][0]):
            return None
        return knots[0][0], knots[-1][1]

    def at_ends(self, first: Supply, last: Supply) -> Takes:
        """Return what the knots take of the first strand above it, and of the last below."""
        pieces = work_out(recipe_of(first, last, unit=self.unit), self.practice).pieces
        above, below = pieces[0].at_butt.mm, pieces[-1].at_fly.mm
        if self.bought:
            above = self._knot(self.bought, first)[1]
        if self.guard:
            below = self._knot(last, self.guard)[0]
        return above, below

    def holds_guard(self, tippet: Supply) -> bool:
        """Whether the guard's spool has enough for the guard below this tippet."""
        if self.guard is None or self.wish.guard is None:
            return True
        at_fly = (
            work_out(recipe_of(tippet, self.guard, unit=self.unit), self.practice)
            .pieces[-1]
            .at_fly.mm
        )
        knots_mm = self._knot(tippet, self.guard)[1] + at_fly
        return self._enough(self.guard, self.wish.guard.length.mm, knots_mm)

    def joints(self, chain: Sequence[Supply]) -> tuple[Joint, ...]:
        """Return the joints between strands."""
        return joints(recipe_of(*chain, unit=self.unit), self.practice)

    def _knot(self, upper: Supply, lower: Supply) -> Takes:
        (joint,) = self.joints((upper, lower))
        above, below = joint_allowances(joint, self.practice, self.cut_mm)
        return above.mm, below.mm

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


def changes(chain: Sequence[Supply]) -> bool:
    """Whether the material is another below than above; a sighter between them counts for none."""
    return chain[0].material != chain[-1].material
