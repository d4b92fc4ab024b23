"""Rules on how the diameters run from the butt to the fly."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from tagend.cards.base.shown_lengths import thickness
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.passing import Percent, passing, turned_back
from tagend.cards.leader.printed_waves import stay_under
from tagend.cards.leader.steps import By, Step, beyond, step_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.printed_sizes import alike, strand_from, strand_up_to
from tagend.cards.practice.rules import Rule

# Parts that may be thicker than what is above them: the customary exceptions.
_MAY_RISE = ("bite guard", "sighter")


def _pairs(leader: Leader) -> Iterator[tuple[Piece, Piece, Joint]]:
    return zip(leader.pieces, leader.pieces[1:], leader.joints, strict=False)


def _tapering(leader: Leader) -> Iterator[tuple[Piece, Joint, Step]]:
    """The joints at which a step counts, each with the piece below it.

    A guard and a sighter may be as they like, metal parts two strands as if they didn't meet, and
    of a thread's many fibres the diameter doesn't tell how it bends.
    """
    for _, lower, joint in _pairs(leader):
        counts = not joint.knot.apart and not joint.meeting.has_thread
        if counts and lower.part not in _MAY_RISE:
            yield lower, joint, step_of(joint.meeting)


def _drop(joint: Joint, leader: Leader) -> str:
    """Return both strands, by name too where their materials differ."""
    meeting = joint.meeting
    upper, lower = (thickness(mm, leader.unit) for mm in (meeting.upper_mm, meeting.lower_mm))
    if meeting.upper == meeting.lower:
        return f"{upper} to {lower}"
    return f"{upper} {meeting.upper.name} to {lower} {meeting.lower.name}"


def rises(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find strands thicker than the one above them, and strands that grow themselves."""
    for _upper, lower, joint in _pairs(leader):
        meeting = joint.meeting
        like = alike(meeting.upper_mm, meeting.lower_mm)
        if meeting.step_mm < 0 and not like and lower.part not in _MAY_RISE:
            drop = _drop(joint, leader)
            yield Fact(lower.place, f"section {lower.place} is thicker than the one above ({drop})")
    for piece in leader.pieces:
        if fly_end_mm(piece.section) > piece.section.diameter.mm:
            yield Fact(piece.place, f"section {piece.place} grows thicker towards the fly")


def steps(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find steps that are too big for how heavy and how stiff the strands are.

    Where the strand below is thicker there is a rise to tell of.
    """
    for lower, joint, step in _tapering(leader):
        apart = beyond(step, rule.limits)
        if joint.meeting.step_mm < 0 or apart is None:
            continue
        place, waves = lower.place, _waves(joint.meeting)
        compared = f"{_AS[apart.by]} {_range(apart.times)} times as thick ({_drop(joint, leader)})"
        if apart.falls:
            most = f"{float(rule.limits[0]):g} times is the most"
            told = f"the step to section {place} is big: the strand above {compared}"
            yield Fact(place, f"{told}, and {most}{waves}")
        else:
            yield Fact(place, f"section {place} rises: it {compared}{waves}")


# What parts two strands, of which the diameters of one material are the measure.
_AS: Mapping[By, str] = {"thick": "is", "heavy": "is as heavy as one", "stiff": "bends like one"}


def _range(times: tuple[float, float]) -> str:
    return " to ".join(dict.fromkeys(f"{each:.2f}" for each in times))


def _waves(meeting: Meeting) -> str:
    """Return what share of a wave turns back, and how many tapers in print stay under it."""
    turned = turned_back(passing(meeting))
    if turned is None:
        return ""
    printed = stay_under(turned.low)
    return (
        f"; on an ideal string {Percent.of(turned)} of a wave would turn back here, and of the "
        f"printed tapers with known diameters {printed.tapers} of {printed.of} stay under that"
    )


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
        told = thickness(tip.mm, leader.unit)
        yield Fact(1, f"the butt is {round(share * 100)} % of the line's tip ({told})")


def butt_for_line(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the butt against the line's weight, where the recipe gives no tip.

    What is level from the line on, with droppers perhaps, has no butt.
    """
    recipe, butt = leader.recipe, leader.pieces[0]
    weight = recipe.line_weight
    level = is_level(replace(recipe, sections=recipe.sections[:2]))
    if weight is None or recipe.line_tip or level or not butt.material.drawn:
        return
    rows = [limit.figures for start, limit in rule.limit.items() if int(start) <= weight]
    (low, high), mm = rows[-1], butt.section.diameter.mm
    is_, least, most = (thickness(each, leader.unit) for each in (mm, low, high))
    if butt.part == "butt" and not (strand_from(mm, low) and strand_up_to(mm, high)):
        yield Fact(
            butt.place,
            f"the butt is {is_}, and {least} to {most} is usual on a line of weight {weight}",
        )


def assumed_guards(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find a last strand that is taken for a bite guard only because it is thick."""
    if any(piece.section.part == "tippet" for piece in leader.pieces):
        return  # so what is below it is a guard by the recipe's own word
    for _upper, lower, joint in _pairs(leader):
        guessed = lower.part == "bite guard" and lower.section.part is None
        if guessed and not joint.meeting.has_wire:
            drop = _drop(joint, leader)
            yield Fact(
                lower.place,
                f"section {lower.place} is thicker than the one above ({drop}) and is "
                "taken for a bite guard",
            )


TAPER_RULES: Mapping[str, Look] = {
    "rise": rises,
    "step": steps,
    "same diameter": repeats,
    "butt and line": butt_and_line,
    "butt for line": butt_for_line,
    "assumed guard": assumed_guards,
}
