"""A leader's strands changed: a recipe and a change in; sections put in, left out or added, out."""

from collections.abc import Mapping
from dataclasses import replace

from cards.errors import refused
from cards.fitting_knots import with_fitting_knots
from cards.leader import work_out
from cards.practice import Practice
from cards.recipe import Part, Recipe, Section, Strand, Variant
from cards.recipe_file import SECTIONS_MOST

Sections = tuple[Section, ...]


def restrung(recipe: Recipe, change: Variant, practice: Practice) -> Recipe:
    """Return the recipe with the strands of a change: replaced, then tippet and bite guard.

    A leader is shortened by stopping one section early and fished with the heavier end; for rough
    mouths a heavier bite guard of fluorocarbon goes on the end: common practice, no source.
    A stated total that no longer holds is left out. Raises `Refused` for a section that is not
    there, and for a strand whose length nothing says.
    """
    sections = _replaced(recipe.sections, change.replace or {})
    sections = _ended(sections, change, _tippet(replace(recipe, sections=sections), practice))
    if change.guard:
        sections = _guarded(sections, change.guard)
    if sections == recipe.sections:
        return recipe
    end = replace(sections[-1], knot=None, dropper=None)
    strung = replace(recipe, sections=(*sections[:-1], end))
    return _with_true_total(with_fitting_knots(strung, recipe, practice), recipe, practice)


def _replaced(sections: Sections, strands: Mapping[int, Strand]) -> Sections:
    for place in strands:
        if place > len(sections):
            raise _no_section(sections, len(sections), f"replace, {place}")
    return tuple(
        _strung(section, strands[place], section.part) if place in strands else section
        for place, section in enumerate(sections, start=1)
    )


def _tippet(recipe: Recipe, practice: Practice) -> int:
    """Return the place of the tippet, or of the last section that is no bite guard."""
    pieces = work_out(recipe, practice).pieces
    tippets = [piece.place for piece in pieces if piece.part == "tippet"]
    others = [piece.place for piece in pieces if piece.part != "bite guard"]
    return (tippets or others or [len(pieces)])[-1]


def _ended(sections: Sections, change: Variant, tippet: int) -> Sections:
    """Return the sections down to where they stop, with another tippet below or in its place."""
    kept, below = sections[: tippet - 1], sections[tippet:]
    if change.stop_after is not None:
        if change.stop_after >= len(sections):
            raise _no_section(sections, len(sections) - 1, "stop_after")
        kept, below = sections[: change.stop_after], ()
        if change.tippet is None:
            return (*kept[:-1], _fished(kept[-1]))
    if change.tippet is None:
        return sections
    return (*kept, _strung(sections[tippet - 1], change.tippet, "tippet"), *below)


def _no_section(sections: Sections, last: int, where: str) -> Exception:
    few = f"{len(sections)} sections" if len(sections) > 1 else "one section"
    instead = f"write 1 to {last}" if last else "leave it whole"
    return refused(f"the leader has {few}", instead, where)


def _fished(section: Section) -> Section:
    """Return the section as the end of the leader: it is the tippet now."""
    return replace(section, part=None) if section.part in ("butt", "taper") else section


def _guarded(sections: Sections, guard: Strand) -> Sections:
    """Return the sections with a bite guard at the end, or in the place of one that is there."""
    if sections[-1].part == "bite guard":
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


def _with_true_total(recipe: Recipe, before: Recipe, practice: Practice) -> Recipe:
    finished = work_out(recipe, practice).finished
    same = finished == work_out(before, practice).finished
    return recipe if same else replace(recipe, total=None)
