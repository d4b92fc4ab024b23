"""Which part of the leader each section is: as its recipe says, else guessed from its place."""

from cfractions import Fraction

from tagend.cards.practice.materials import Material, Materials
from tagend.cards.practice.printed_sizes import alike
from tagend.cards.recipe.recipe import Part, Recipe, Section


def parts(recipe: Recipe, materials: Materials) -> tuple[Part, ...]:
    """Return one part for each section, from the butt to the fly."""
    tippet = _tippet_place(recipe, materials)
    return tuple(
        section.part or _guess(place, tippet) for place, section in enumerate(recipe.sections)
    )


def is_level(recipe: Recipe) -> bool:
    """Whether the leader keeps one diameter from end to end."""
    first_mm = recipe.sections[0].diameter.mm
    return all(s.diameter.mm == first_mm and s.tapers_to is None for s in recipe.sections)


def fly_end_mm(section: Section) -> Fraction:
    """Return the diameter that the joint to the next section meets."""
    return (section.tapers_to or section.diameter).mm


def is_bought(section: Section, material: Material) -> bool:
    """Whether a piece is bought ready made; braided and furled line always is."""
    return section.bought or material.strand == "thread"


def _guess(place: int, tippet: int) -> Part:
    if place == tippet:
        return "tippet"
    if place > tippet:
        return "bite guard"
    return "butt" if place == 0 else "taper"


def _tippet_place(recipe: Recipe, materials: Materials) -> int:
    """Return the place of the tippet: the last section, or the one above a bite guard."""
    named = [place for place, section in enumerate(recipe.sections) if section.part == "tippet"]
    last = len(recipe.sections) - 1
    if named or last == 0:
        return named[-1] if named else last
    end, above = recipe.sections[last], recipe.sections[last - 1]
    thin_mm, wire = fly_end_mm(above), materials.find(end.material).is_wire
    guard_like = wire or (end.diameter.mm > thin_mm and not alike(end.diameter.mm, thin_mm))
    if end.part == "bite guard" or (end.part is None and guard_like):
        return last - 1
    return last
