"""A leader's strands changed: a recipe and a change in; sections put in, left out or added, out."""

from collections.abc import Mapping

from msgspec.structs import replace

from tagend.cards.base.plural import counted
from tagend.cards.leader.choosing import butt_end, fly_end, joints
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.parts import is_level, parts
from tagend.cards.leader.steps import big, step_of
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import SECTIONS_MOST, Part, Recipe, Section, Strand, Variant
from tagend.layouts.base.faults import refused

Sections = tuple[Section, ...]


def restrung(recipe: Recipe, change: Variant, practice: Practice) -> Recipe:
    """Return the recipe with the strands of a change: replaced, then tippet and bite guard.

    A leader is shortened by stopping one section early and fished with the heavier end; for rough
    mouths a heavier bite guard of fluorocarbon goes on the end: common practice, no source.
    Raises `Refused` for a section that is not there, and for a strand whose length nothing says.
    """
    strung = replace(recipe, sections=_replaced(recipe.sections, change.replace or {}))
    strung = replace(strung, sections=_ended(strung, change, practice))
    if change.guard:
        strung = replace(strung, sections=_guarded(strung, change.guard, practice))
    end = replace(strung.sections[-1], knot=None, dropper=None)
    strung = replace(strung, sections=(*strung.sections[:-1], end))
    return with_fitting_knots(strung, recipe, practice)


def told_strands(varied: Recipe, change: Variant, practice: Practice) -> dict[int, Strand]:
    """Return the strands that a change names, by their place in the recipe that it made."""
    last = change.stop_after or len(varied.sections)
    told = {place: strand for place, strand in (change.replace or {}).items() if place <= last}
    if change.tippet:
        told[_tippet(varied, practice) + 1] = change.tippet
    if change.guard:
        told[len(varied.sections)] = change.guard
    return told


def _replaced(sections: Sections, strands: Mapping[int, Strand]) -> Sections:
    for place in strands:
        if place > len(sections):
            raise _no_section(sections, len(sections), f"replace, {place}")
    return tuple(
        _strung(section, strands[place], section.part) if place in strands else section
        for place, section in enumerate(sections, start=1)
    )


def _ended(recipe: Recipe, change: Variant, practice: Practice) -> Sections:
    """Return the sections down to where they stop, with another tippet below or in its place."""
    sections, tippet = recipe.sections, _tippet(recipe, practice)
    kept, below = sections[:tippet], sections[tippet + 1 :]
    if change.stop_after is not None:
        if change.stop_after >= len(sections):
            raise _no_section(sections, len(sections) - 1, "stop_after")
        kept, below = sections[: change.stop_after], ()
        if change.tippet is None:
            return (*kept[:-1], _fished(kept[-1]))
    if change.tippet is None:
        return sections
    return (*kept, _strung(sections[tippet], change.tippet, "tippet"), *below)


def _tippet(recipe: Recipe, practice: Practice) -> int:
    """Return the index of the tippet, or of the last section that is no bite guard."""
    found = parts(recipe, practice.materials)
    tippets = [index for index, part in enumerate(found) if part == "tippet"]
    others = [index for index, part in enumerate(found) if part != "bite guard"]
    return (tippets or others or [len(found) - 1])[-1]


def _no_section(sections: Sections, last: int, where: str) -> Exception:
    instead = f"write 1 to {last}" if last else "leave it whole"
    return refused(f"the leader has {counted(len(sections), 'section')}", instead, where)


def _fished(section: Section) -> Section:
    """Return the section as the end of the leader: it is the tippet now."""
    return replace(section, part=None) if section.part in ("butt", "taper") else section


def _guarded(recipe: Recipe, guard: Strand, practice: Practice) -> Sections:
    """Return the sections with a bite guard at the end, or in the place of one that is there."""
    sections = recipe.sections
    if parts(recipe, practice.materials)[-1] == "bite guard":
        return (*sections[:-1], _strung(sections[-1], guard, "bite guard"))
    if guard.length is None:
        raise refused(f"'{guard}' says no length", f"write one behind it: '{guard} 12 in'", "guard")
    if len(sections) == SECTIONS_MOST:
        raise refused(f"the leader has {SECTIONS_MOST} sections", "leave one out for it", "guard")
    added = Section(guard.length, guard.diameter, guard.material, guard.strength, part="bite guard")
    return (*sections, added)


def _strung(section: Section, strand: Strand, part: Part | None) -> Section:
    """Return the section tied of another strand, of its old length where the strand says none."""
    return Section(
        strand.length or section.length,
        strand.diameter,
        strand.material,
        strand.strength,
        knot=section.knot,
        part=part,
        dropper=section.dropper,
    )


def with_fitting_knots(recipe: Recipe, before: Recipe, practice: Practice) -> Recipe:
    """Return the recipe without the names of knots that do not suit its new strands.

    Where a knot meets strands as before, it stays: its recipe chose it for them. Over a step that
    is big now, the rule has the choice of a knot that is not for one.
    """
    known = [(joint.knot.name, joint.meeting) for joint in joints(before, practice)]
    above = (
        section
        if (joint.knot.name, joint.meeting) in known or _joins(joint, practice)
        else replace(section, knot=None)
        for section, joint in zip(recipe.sections, joints(recipe, practice), strict=False)
    )
    fitting = replace(recipe, sections=(*above, recipe.sections[-1]))
    if not _stays(fly_end(recipe, practice), fly_end(before, practice)):
        fitting = replace(fitting, fly=replace(recipe.fly, knot=None))
    loop = butt_end(recipe, practice)
    became_level = is_level(recipe) and not is_level(before)
    misfit = became_level and loop.knot is not None and loop.knot.tapered_only
    if misfit or not _stays(loop, butt_end(before, practice)):
        fitting = replace(fitting, butt=replace(recipe.butt, end=None))
    return fitting


def _stays(now: End, then: End) -> bool:
    """Whether an end's knot suits its strand, or meets the one that it met before."""
    return now.knot is None or now.meeting == then.meeting or _suits(now.knot, now.meeting)


def _joins(joint: Joint, practice: Practice) -> bool:
    knot, meeting = joint.knot, joint.meeting
    bears_steps = knot.shock or knot.apart or knot in practice.choice["big step"].order
    is_big = big(step_of(meeting), practice.rules["step"].limits)
    return _suits(knot, meeting) and (bears_steps or not is_big)


def _suits(knot: Knot, meeting: Meeting) -> bool:
    return untieable(knot, meeting) is None and unfit(knot, meeting) is None
