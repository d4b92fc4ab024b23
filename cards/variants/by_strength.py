"""Strands that are known by their strength alone: what is asked for and a rack in, spools out."""

from collections.abc import Mapping
from typing import TypeAlias

from tagend.cards.base.units import parse_strength
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.recipe.strand import StrandByStrength
from tagend.cards.variants.from_rack import NEAR
from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under

Tables: TypeAlias = Mapping[str, object]  # of a recipe file


def with_diameters(tables: Tables, rack: Rack | None, practice: Practice) -> Tables:
    """Return a recipe file's tables with the diameter of a spool wherever a section has none.

    So a formula that is known in pounds becomes a recipe. Its other keys stay as they are; raises
    `Refused` for each section that no spool is near.
    """
    sections = tables.get("section")
    if rack is None or not isinstance(sections, list):
        return tables
    faults: list[Fault] = []
    filled = []
    for place, section in enumerate(sections, start=1):
        with noting(faults), under(f"section {place}"):
            filled.append(_filled(section, rack, practice))
    refuse_any(faults)
    return {**tables, "section": filled}


def _filled(section: object, rack: Rack, practice: Practice) -> object:
    """Return a section with the diameter, material and strength of its spool."""
    if not isinstance(section, dict) or "diameter" in section:
        return section
    if not all(map(section.get, _KNOWN)):
        return section  # which the recipe's own schema speaks of
    strength, material = section["strength"], section["material"]
    asked = StrandByStrength(
        strength=parse_strength(strength),
        material=practice.material(str(material)),
        length=None,
    )
    spool = spool_by_strength(asked, rack, practice)
    own = spool.strength.plain if spool.strength else strength
    found = {"diameter": spool.diameter.plain, "material": spool.material, "strength": own}
    return {**section, **found}


_KNOWN = ("strength", "material")


def spool_by_strength(asked: StrandByStrength, rack: Rack, practice: Practice) -> Spool:
    """Return the spool nearest in strength: of the material, or else of its kind of line.

    Raises `Refused` where none is near, with what the rack has of the kind.
    """
    find = practice.materials.find
    wanted = asked.strength.kg
    of_kind = [
        (max(strength.kg, wanted) / min(strength.kg, wanted), strength, spool)
        for spool in rack.spools
        if (strength := spool.strength) and find(spool.material).kind == find(asked.material).kind
    ]
    fit = [
        (spool.material != asked.material, times, place, spool)
        for place, (times, _, spool) in enumerate(of_kind)
        if times <= NEAR
    ]
    if fit:
        return min(fit)[-1]
    has = ", ".join(f"{strength.plain} {spool.material}" for _, strength, spool in of_kind)
    raise refused(
        f"no spool on the rack is {asked.material} of about {asked.strength.plain}",
        (f"name one of {has}, or " if has else "")
        + "read the diameter off the spool that you buy and write it first",
    )
