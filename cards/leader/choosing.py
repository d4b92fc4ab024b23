"""Which knots a leader has: a recipe and a person's practice in, each named or chosen, out."""

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.leader.joints import End, Joint, end_of, joint_of
from tagend.cards.leader.parts import fly_end_mm, is_bought, is_level, parts
from tagend.cards.leader.said import Said, said
from tagend.cards.leader.steps import big, step_of
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Meets, Practice
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.cards.recipe.values import BARE


class Chosen(Struct, frozen=True, kw_only=True):
    """A knot that nobody named, None where none can be tied, and why it is this one."""

    knot: Knot | None
    why: Said
    own: bool  # is it the person's own habit?
    liked: bool  # is it, or the first choice for how the strands meet?


def joints(recipe: Recipe, practice: Practice) -> tuple[Joint, ...]:
    """Return the joint below each section but the last."""
    below = zip(recipe.sections[1:], parts(recipe, practice.materials)[1:], strict=True)
    return tuple(
        _joint(upper, lower, practice, is_guard=part == "bite guard")
        for upper, (lower, part) in zip(recipe.sections, below, strict=False)
    )


def butt_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly line; where none is named, a loop that suits the leader."""
    first, level = recipe.sections[0], is_level(recipe)
    material = practice.materials.find(first.material)
    meeting = Meeting.alone(material, first.diameter.mm)
    loop_mm = recipe.butt.loop.mm if recipe.butt.loop else practice.knots.loop_mm
    if recipe.butt.end is None and is_bought(first, material):
        return End(knot=None, meeting=meeting, reason=said("bought_with_its_own"))
    if recipe.butt.end is not None:
        named = _named(recipe.butt.end, practice)
        return end_of(named, meeting, loop_mm, practice, bought=is_bought(first, material))
    chosen = first_choice("butt", meeting, practice, level=level)
    is_usual = level and chosen.knot and not chosen.own
    end = end_of(chosen.knot, meeting, loop_mm, practice)
    why = said("usual_on_level") if is_usual else chosen.why
    return replace(end, reason=why, own=chosen.own)


def fly_end(recipe: Recipe, practice: Practice) -> End:
    """Return the end at the fly; where none is named, line for a usual knot is kept."""
    last, loop_mm = recipe.sections[-1], practice.knots.fly_loop_mm
    meeting = Meeting.alone(practice.materials.find(last.material), fly_end_mm(last))
    if recipe.fly.knot is not None:
        return end_of(_named(recipe.fly.knot, practice), meeting, loop_mm, practice)
    chosen = first_choice("fly", meeting, practice)
    end = end_of(chosen.knot, meeting, loop_mm, practice)
    return replace(end, reason=chosen.why, own=chosen.own)


def _named(name: str, practice: Practice) -> Knot | None:
    return None if name == BARE else practice.knots.find(name)


def _joint(upper: Section, lower: Section, practice: Practice, *, is_guard: bool) -> Joint:
    meeting = Meeting(
        upper=practice.materials.find(upper.material),
        upper_mm=fly_end_mm(upper),
        lower=practice.materials.find(lower.material),
        lower_mm=lower.diameter.mm,
    )
    bought = is_bought(upper, meeting.upper), is_bought(lower, meeting.lower)
    if upper.knot:
        return joint_of(practice.knots.find(upper.knot), meeting, practice, bought=bought)
    return chosen_joint(meeting, practice, is_guard=is_guard, bought=bought)


def chosen_joint(
    meeting: Meeting,
    practice: Practice,
    *,
    is_guard: bool = False,
    bought: tuple[bool, bool] = (False, False),
) -> Joint:
    """Return two strands, of which the lower may be a bite guard, joined where no knot is named."""
    chosen = choice_for(meeting, practice, is_guard=is_guard)
    # Where nothing of the order can be tied, the audit says so.
    knot = chosen.knot or practice.choice["same line"].usual[0]
    joint = joint_of(knot, meeting, practice, bought=bought)
    return replace(joint, reason=chosen.why, own=chosen.own, liked=chosen.liked)


def choice_for(meeting: Meeting, practice: Practice, *, is_guard: bool = False) -> Chosen:
    """Return the first choice for how two strands meet, the lower of which may be a bite guard."""
    return first_choice(_meets(meeting, is_guard, practice), meeting, practice)


def _meets(meeting: Meeting, is_guard: bool, practice: Practice) -> Meets:
    """Return how two strands meet, as a person says it."""
    if meeting.has_thread:
        return "bought butt"
    if meeting.has_wire:
        return "wire"
    if meeting.mixed:
        return "nylon to fluorocarbon"
    is_shock = is_guard and meeting.step_mm < 0
    if is_shock or big(step_of(meeting), practice.rules["step"].limits):
        return "big step"
    return "same line"


def first_choice(
    meets: Meets, meeting: Meeting, practice: Practice, *, level: bool = False
) -> Chosen:
    """Return a knot for a meeting.

    An own habit holds wherever it can be tied; of the usual ones the first that nothing speaks
    against, and where all are spoken against the last that can be tied at all.
    """
    choice = practice.choice[meets]
    for knot in choice.own:
        if untieable(knot, meeting) is None:
            return Chosen(knot=knot, why=said("own_choice", meets=meets), own=True, liked=True)
    tied, why = None, Said(meets)
    for knot in choice.usual:
        against = untieable(knot, meeting)
        if against is None:
            tied = knot
            against = unfit(knot, meeting)
            if level and knot.tapered_only:
                against = said("for_tapered_alone")
        if against is None:
            return Chosen(knot=knot, why=why, own=False, liked=knot == choice.usual[0])
        why = said("not_this", knot=knot.name, against=against)
    return Chosen(knot=tied, why=said("none_suits"), own=False, liked=tied == choice.usual[0])
