"""Rules on how the diameters run from the butt to the fly."""

from collections.abc import Iterator, Mapping

from tagend.cards.base.shown_lengths import inches
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.leader.steps import big, step_of
from tagend.cards.practice.rules import Rule

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


def rises(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find strands thicker than the one above them, and strands that grow themselves."""
    for _upper, lower, joint in _pairs(leader):
        if joint.meeting.step_mm < 0 and lower.part not in _MAY_RISE:
            yield Fact(
                lower.place, f"section {lower.place} is thicker than the one above ({_drop(joint)})"
            )
    for piece in leader.pieces:
        if fly_end_mm(piece.section) > piece.section.diameter.mm:
            yield Fact(piece.place, f"section {piece.place} grows thicker towards the fly")


def steps(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find steps that are too big for how thick and how stiff the strands are."""
    for _, lower, joint in _tapering(leader):
        step = step_of(joint.meeting)
        if step.falls and big(step, rule.limits):
            yield Fact(
                lower.place,
                f"the step to section {lower.place} is big: the strand above {_compared(joint)}, "
                f"and {float(rule.limits[0])} times is the most",
            )


def _compared(joint: Joint) -> str:
    """Return how much thicker the strand above is, or bends as if it were."""
    meeting = joint.meeting
    low, high = (f"{times:.2f}" for times in step_of(meeting).times)
    if low == high:
        return f"is {low} times as thick ({_drop(joint)})"
    strands = f"{inches(meeting.upper_mm)} {meeting.upper.name} to "
    strands += f"{inches(meeting.lower_mm)} {meeting.lower.name}"
    return f"bends like one {low} to {high} times as thick ({strands})"


def repeats(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find neighbours of one strand, unless their knot carries a dropper or a ring."""
    for upper, lower, joint in _pairs(leader):
        same = joint.meeting.step_mm == 0 and joint.meeting.upper == joint.meeting.lower
        if same and upper.section.dropper is None and not joint.knot.apart:
            yield Fact(lower.place, f"sections {upper.place} and {lower.place} are the same strand")


def butt_and_line(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the butt against the tip of the fly line, where the recipe gives it."""
    tip = leader.recipe.line_tip
    low, high = rule.limits
    if tip is None:
        return
    share = leader.recipe.sections[0].diameter.mm / tip.mm
    if not low <= share <= high:
        yield Fact(1, f"the butt is {round(share * 100)} % of the line's tip ({inches(tip.mm)})")


TAPER_RULES: Mapping[str, Look] = {
    "rise": rises,
    "step": steps,
    "same diameter": repeats,
    "butt and line": butt_and_line,
}
