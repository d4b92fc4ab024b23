"""Rules on how the diameters run from the butt to the fly."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from tagend.cards.base.shown_lengths import inches
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm

# Parts that may be thicker than what is above them: the customary exceptions.
_MAY_RISE = ("bite guard", "sighter")


def _pairs(leader: Leader) -> Iterator[tuple[Piece, Piece, Joint]]:
    return zip(leader.pieces, leader.pieces[1:], leader.joints, strict=False)


def _tapering(leader: Leader) -> Iterator[tuple[Piece, Piece, Joint]]:
    """The joints at which a step counts: not into a guard or sighter, and not across a ring."""
    for upper, lower, joint in _pairs(leader):
        if lower.part not in _MAY_RISE and not joint.knot.apart:
            yield upper, lower, joint


def _drop(joint: Joint) -> str:
    return f"{inches(joint.meeting.upper_mm)} to {inches(joint.meeting.lower_mm)}"


def rises(leader: Leader) -> Iterator[Fact]:
    """Find strands thicker than the one above them, and strands that grow themselves."""
    for _upper, lower, joint in _pairs(leader):
        if joint.meeting.step_mm < 0 and lower.part not in _MAY_RISE:
            yield Fact(
                lower.place, f"section {lower.place} is thicker than the one above ({_drop(joint)})"
            )
    for piece in leader.pieces:
        if fly_end_mm(piece.section) > piece.section.diameter.mm:
            yield Fact(piece.place, f"section {piece.place} grows thicker towards the fly")


def steps(leader: Leader, limit: Fraction) -> Iterator[Fact]:
    """Find steps that are too big in inches."""
    for _, lower, joint in _tapering(leader):
        if joint.meeting.step_mm > limit:
            yield Fact(
                lower.place,
                f"the step to section {lower.place} is {inches(joint.meeting.step_mm)} "
                f"({_drop(joint)}), more than {inches(limit)}",
            )


def ratios(leader: Leader, limit: Fraction) -> Iterator[Fact]:
    """Find steps that are too big for how fine the strands are."""
    for _, lower, joint in _tapering(leader):
        ratio = joint.meeting.upper_mm / joint.meeting.lower_mm
        if ratio > limit:
            yield Fact(
                lower.place,
                f"the strand above section {lower.place} is {float(ratio):.2f} times as thick "
                f"({_drop(joint)})",
            )


def stiffness(leader: Leader, limit: Fraction) -> Iterator[Fact]:
    """Compare E d^4 where the materials differ and both moduli are given; else E drops out."""
    for _, lower, joint in _tapering(leader):
        ratio = stiffness_ratio(joint)
        if ratio is not None and not 1 / limit <= ratio <= limit:
            yield Fact(
                lower.place,
                f"above section {lower.place} the strand is {float(ratio):.1f} times as stiff",
            )


def stiffness_ratio(joint: Joint) -> Fraction | None:
    """Return how many times as stiff in bending the upper strand is, or None where unknown.

    EI = E x pi x d^4 / 64, a solid round strand in any mechanics of materials text.
    """
    meeting = joint.meeting
    ratio = (meeting.upper_mm / meeting.lower_mm) ** 4
    if meeting.upper == meeting.lower:
        return ratio
    if meeting.upper.modulus is None or meeting.lower.modulus is None:
        return None
    return ratio * sum(meeting.upper.modulus) / sum(meeting.lower.modulus)


def repeats(leader: Leader) -> Iterator[Fact]:
    """Find neighbours of one strand, unless their knot carries a dropper or a ring."""
    for upper, lower, joint in _pairs(leader):
        same = joint.meeting.step_mm == 0 and joint.meeting.upper == joint.meeting.lower
        if same and upper.section.dropper is None and not joint.knot.apart:
            yield Fact(lower.place, f"sections {upper.place} and {lower.place} are the same strand")


def butt_and_line(leader: Leader, low: Fraction, high: Fraction) -> Iterator[Fact]:
    """Hold the butt against the tip of the fly line, where the recipe gives it."""
    tip = leader.recipe.line_tip
    if tip is None:
        return
    share = leader.recipe.sections[0].diameter.mm / tip.mm
    if not low <= share <= high:
        yield Fact(1, f"the butt is {round(share * 100)} % of the line's tip ({inches(tip.mm)})")


TAPER_RULES: Mapping[str, Look] = {
    "rise": rises,
    "step": steps,
    "diameter ratio": ratios,
    "stiffness step": stiffness,
    "same diameter": repeats,
    "butt and line": butt_and_line,
}
