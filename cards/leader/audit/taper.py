"""Rules on how the diameters run from the butt to the fly."""

from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm, is_level
from tagend.cards.leader.passing import passing, turned_back
from tagend.cards.leader.said import Said, said
from tagend.cards.leader.steps import Step, beyond, step_of
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


def _drop(meeting: Meeting) -> Said:
    """Return both strands, by name too where their materials differ."""
    both = {"upper": meeting.upper_mm, "lower": meeting.lower_mm}
    if meeting.upper == meeting.lower:
        return said("drop", **both)
    return said("drop_of", **both, above=meeting.upper.name, below=meeting.lower.name)


def rises(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find strands thicker than the one above them, and strands that grow themselves."""
    for _upper, lower, joint in _pairs(leader):
        meeting = joint.meeting
        if meeting.step_mm >= 0 or lower.part in _MAY_RISE:
            continue
        if not alike(meeting.upper_mm, meeting.lower_mm):
            rise = said("rises", section=lower.place, drop=_drop(meeting))
            yield Fact(lower.place, rise)
    for piece in leader.pieces:
        if fly_end_mm(piece.section) > piece.section.diameter.mm:
            yield Fact(piece.place, said("grows", section=piece.place))


def steps(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find steps that are too big for how heavy and how stiff the strands are.

    Where the strand below is thicker there is a rise to tell of.
    """
    limits = rule.limits
    for lower, joint, step in _tapering(leader):
        apart = beyond(step, limits)
        if joint.meeting.step_mm < 0 or apart is None:
            continue
        told = {
            "section": lower.place,
            "compared": said(f"as_{apart.by}", times=apart.times),
            "drop": _drop(joint.meeting),
            "waves": _waves(joint.meeting),
        }
        big = said("big_step", **told, most=limits[0])
        yield Fact(lower.place, big if apart.falls else said("step_rises", **told))


def _waves(meeting: Meeting) -> Said | None:
    """Return what share of a wave turns back, and how many tapers in print stay under it."""
    turned = turned_back(passing(meeting))
    if turned is None:
        return None
    from tagend.cards.leader.printed_waves import stay_under  # few leaders have such a step

    printed = stay_under(turned.low)
    return said("turns_back", turned=turned, count=printed.tapers, of=printed.of)


def repeats(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find neighbours of one strand, unless their knot carries a dropper or a ring."""
    for upper, lower, joint in _pairs(leader):
        same = joint.meeting.step_mm == 0 and joint.meeting.upper == joint.meeting.lower
        if same and upper.section.dropper is None and not joint.knot.apart:
            yield Fact(lower.place, said("same_strand", upper=upper.place, lower=lower.place))


def butt_and_line(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the butt against the tip of the fly line, where the recipe gives it."""
    tip = leader.recipe.line_tip
    low, high = rule.limits
    if tip is None:
        return
    share = leader.recipe.sections[0].diameter.mm / tip.mm
    if not low <= share <= high:
        yield Fact(1, said("butt_share", percent=round(share * 100), tip=tip.mm))


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
    if butt.part == "butt" and not (strand_from(mm, low) and strand_up_to(mm, high)):
        usual = {"least": low, "most": high, "weight": weight}
        yield Fact(butt.place, said("butt_for_line", butt=mm, **usual))


def assumed_guards(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find a last strand that is taken for a bite guard only because it is thick."""
    if any(piece.section.part == "tippet" for piece in leader.pieces):
        return  # so what is below it is a guard by the recipe's own word
    for _upper, lower, joint in _pairs(leader):
        guessed = lower.part == "bite guard" and lower.section.part is None
        if guessed and not joint.meeting.has_wire:
            drop = _drop(joint.meeting)
            yield Fact(lower.place, said("assumed_guard", section=lower.place, drop=drop))


TAPER_RULES: Mapping[str, Look] = {
    "rise": rises,
    "step": steps,
    "same diameter": repeats,
    "butt and line": butt_and_line,
    "butt for line": butt_for_line,
    "assumed guard": assumed_guards,
}
