"""A leader's strands changed: a recipe and a change in; sections put in, left out or added, out."""

from collections.abc import Mapping
from dataclasses import replace

from tagend.cards.leader.parts import parts
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe, Section, Strand, Variant
from tagend.cards.recipe.recipe_file import SECTIONS_MOST
from tagend.cards.variants.fitting_knots import with_fitting_knots
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
    few = f"{len(sections)} sections" if len(sections) > 1 else "one section"
    instead = f"write 1 to {last}" if last else "leave it whole"
    return refused(f"the leader has {few}", instead, where)


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
