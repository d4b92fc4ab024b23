"""How often a knot is wound: a knot and the strands it is tied in in, the turns of each side out.

The cut, the card, its steps and figures, the bench sheet and the JSON all say what is decided here.
"""

from fractions import Fraction

from tagend.cards.practice.knots import Knot, Sides, step_for
from tagend.cards.practice.printed_sizes import step_from


def joint_turns(knot: Knot, thick_mm: Fraction, thin_mm: Fraction) -> Sides[int]:
    """Return the turns of both strands of a joint, each by its own diameter; 0 for no turns."""
    if not knot.turns:
        return Sides(0, 0)
    thick, thin = step_for(knot.turns, thick_mm).thick, step_for(knot.turns, thin_mm).thin
    extra = knot.extra_turns
    if extra is None or not step_from(thick_mm - thin_mm, extra.step_mm):
        return Sides(thick, thin)
    return Sides(thick, thin + extra.thin)


def end_turns(knot: Knot, strand_mm: Fraction) -> Sides[int]:
    """Return the turns of a knot in one strand, which are those of both its sides."""
    count = step_for(knot.turns, strand_mm).thick if knot.turns else 0
    return Sides(count, count)
