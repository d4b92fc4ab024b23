"""Rules on strengths: whether the leader breaks where it should, and bears what line can."""

import math
from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from tagend.cards.base.units import STRENGTH_KG, Strength
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.said import Said, said
from tagend.cards.practice.rules import Limits, Rule
from tagend.cards.recipe.recipe import Section

_NEWTONS_PER_KG = 9.80665  # standard gravity, ISO 80000-3: kilograms-force to newtons
_OTHER = {"lb": "kg", "kg": "lb"}


def weak_sections(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find sections above the tippet that are weaker than it."""
    tippet = leader.tippet
    strength = tippet.section.strength
    if strength is None:
        return
    for piece in leader.pieces[: tippet.place - 1]:
        own = piece.section.strength
        if own is None or own.kg >= strength.kg:
            continue
        # Strength may rise where nylon passes to thinner fluorocarbon: common practice, no source.
        passes = piece.place == tippet.place - 1 and leader.joints[piece.place - 1].meeting.mixed
        says = said("weak_section", section=piece.place, own=own, tippet=strength)
        if passes:
            yield Fact(piece.place, says, "note", said("nylon_passes"))
        else:
            yield Fact(piece.place, says)


def strength_for_size(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find strengths that no line of that material and diameter has."""
    for piece in leader.pieces:
        section, band = piece.section, _band(piece, rule)
        stress = nominal_stress_mpa(section)
        if section.strength is None or stress is None or band is None:
            continue
        low, high = band
        if low <= stress <= high:
            continue
        too, meant = "strong" if stress > high else "weak", in_other_unit(section.strength)
        line = {"diameter": section.diameter, "material": section.material}
        told = said(f"too_{too}", section=piece.place, bears=section.strength, **line)
        if low <= (nominal_stress_mpa(replace(section, strength=meant)) or 0) <= high:
            told = Said(f"{told.key}_slip", (*told.values, ("meant", meant)))
        yield Fact(piece.place, told)


def _band(piece: Piece, rule: Rule) -> Limits | None:
    """Return the least and the most MPa of such line; None where the rule has no figures."""
    material, mm = piece.material, piece.section.diameter.mm
    name = f"hard {material.kind}" if material.hard else material.kind
    for thin in ("light", "fine"):
        if material.drawn and not material.hard and mm < rule.limit[f"{thin}_below"].figures[0]:
            name = thin
    return rule.limit[name].figures if name in rule.limit else None


def in_other_unit(strength: Strength) -> Strength:
    """Return the same number of the other unit, which may have been meant: kg for lb."""
    unit, other = strength.unit, _OTHER[strength.unit]
    plain = strength.plain.removesuffix(unit) + other
    kg = strength.kg / STRENGTH_KG[unit] * STRENGTH_KG[other]
    return Strength(kg, plain, plain)


def nominal_stress_mpa(section: Section) -> float | None:
    """Return strength over the strand's cross-section, in MPa (N/mm2)."""
    if section.strength is None or section.tapers_to is not None:
        return None
    area = math.pi * float(section.diameter.mm) ** 2 / 4
    return float(section.strength.kg) * _NEWTONS_PER_KG / area


STRENGTH_RULES: Mapping[str, Look] = {
    "weak section": weak_sections,
    "strength for size": strength_for_size,
}
