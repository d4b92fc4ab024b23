"""A leader strung again from the spools at hand: a recipe and a rack in, the recipe on them out."""

import math
from collections.abc import Sequence, Set
from typing import NamedTuple

from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import alike
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.layouts.base.faults import Fault, refuse_any, refused

# How many times as thick or as strong a near spool may be, or the other way round: at 4X that is
# one X size. Common practice, no source.
NEAR = Fraction(115, 100)
# What another material of the same kind weighs: as a diameter that is so much off. A choice.
_OTHER_MATERIAL = math.log(1.05) ** 2


class _Strung(NamedTuple):
    """The sections down to one, and how far they are from what was wanted; less is better."""

    kinds: int  # sections of another kind of line
    misfit: float  # squares of how far ratios and diameters are off, as logarithms
    sections: tuple[Section, ...]


def strung_from(rack: Rack, recipe: Recipe, kept: Set[int], practice: Practice) -> Recipe:
    """Return the recipe on spools of the rack, its lengths kept and its taper by ratio.

    Each drawn section takes diameter, material and strength of a near spool, of the same kind of
    line where the rack has one, and is thinner than the one above wherever it was. What is bought,
    tapers itself or is no drawn line stays, and so do the sections `kept`, by their place.
    Raises `Refused` with what to buy.
    """
    best = [_Strung(0, 0.0, ())]
    above: Section | None = None
    for place, (section, choices) in enumerate(_offers(rack, recipe, kept, practice), start=1):
        best = [
            min((_grown(strung, above, section, offer, practice) for strung in fit), key=_strain)
            for offer in choices
            if (fit := [strung for strung in best if _steps_alike(strung, above, section, offer)])
        ]
        if not best:
            raise refused(
                f"no spool near {_words(section)} is thinner than the one above",
                f"buy {' or '.join(_words(each) for each in (above, section) if each)}",
                f"section {place}",
            )
        above = section
    return replace(recipe, sections=min(best, key=_strain).sections)


def _offers(
    rack: Rack, recipe: Recipe, kept: Set[int], practice: Practice
) -> list[tuple[Section, Sequence[Section]]]:
    """Return each section with what it can be tied of. Raises `Refused` where that is nothing."""
    offers = [
        (section, [section] if place in kept else _choices(rack, section, practice))
        for place, section in enumerate(recipe.sections, start=1)
    ]
    refuse_any(
        Fault(
            f"section {place}",
            f"no spool near {_words(section)} holds {section.length.high.plain}",
            f"buy {_words(section)}",
        )
        for place, (section, choices) in enumerate(offers, start=1)
        if not choices
    )
    return offers


def _choices(rack: Rack, section: Section, practice: Practice) -> Sequence[Section]:
    """Return a section on each near spool, of like ones on the fullest."""
    drawn = practice.materials.find(section.material).drawn
    if section.bought or section.tapers_to or not drawn:
        return [section]
    found: dict[Line, Section] = {}
    for spool in sorted(rack.spools, key=lambda spool: -spool.left.mm):
        if _serves(spool, section, practice):
            found.setdefault(Line.of(spool), _on(spool, section))
    return list(found.values())


def _serves(spool: Spool, section: Section, practice: Practice) -> bool:
    thinner, thicker = sorted((spool.diameter.mm, section.diameter.mm))
    holds = spool.left.mm >= section.length.high.mm
    return thicker <= NEAR * thinner and holds and practice.materials.find(spool.material).drawn


def _on(spool: Spool, section: Section) -> Section:
    return replace(
        section, diameter=spool.diameter, material=spool.material, strength=spool.strength
    )


def _strain(strung: _Strung) -> tuple[int, float]:
    return strung.kinds, strung.misfit


def _grown(
    strung: _Strung, above: Section | None, wanted: Section, got: Section, practice: Practice
) -> _Strung:
    """Return what is strung so far with one section more."""
    off = math.log(got.diameter.mm / wanted.diameter.mm)
    misfit = strung.misfit + off**2
    if above is not None:
        misfit += (math.log(fly_end_mm(strung.sections[-1]) / fly_end_mm(above)) - off) ** 2
    if got.material != wanted.material:
        misfit += _OTHER_MATERIAL
    find = practice.materials.find
    other_kind = find(got.material).kind != find(wanted.material).kind
    return _Strung(strung.kinds + other_kind, misfit, (*strung.sections, got))


def _steps_alike(strung: _Strung, above: Section | None, wanted: Section, got: Section) -> bool:
    """Whether a section steps down, or stays alike, where the recipe's own does."""
    if above is None:
        return True
    upper, then = fly_end_mm(strung.sections[-1]), fly_end_mm(above)
    if alike(then, wanted.diameter.mm):
        return upper >= got.diameter.mm or alike(upper, got.diameter.mm)
    falls = upper > got.diameter.mm and not alike(upper, got.diameter.mm)
    return falls or then < wanted.diameter.mm


def _words(section: Section) -> str:
    return f"{section.diameter.plain} {section.material}"
