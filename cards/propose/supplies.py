"""The line that a taper may be made of: a rack or a list of diameters in, strands out."""

import math
from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import thickness
from tagend.cards.base.units import Diameter, Strength
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.printed_sizes import alike
from tagend.cards.practice.rack_file import Rack
from tagend.cards.practice.rules_of_thumb import rules_of_thumb
from tagend.cards.propose.asked_piece import AskedPiece
from tagend.cards.propose.wish import Tippet
from tagend.layouts.base.faults import refused

T = TypeVar("T")


class Supply(Struct, frozen=True):
    """Line that a section can be cut from."""

    material: str
    diameter: Diameter
    strength: Strength | None = None
    label: str | None = None  # the spool's
    left_mm: Fraction | None = None  # None where there is no end to it


def supplies_of_rack(rack: Rack) -> tuple[Supply, ...]:
    """Return the line on the rack's spools, in their order."""
    return tuple(
        Supply(
            material=spool.material,
            diameter=spool.diameter,
            strength=spool.strength,
            label=spool.label,
            left_mm=spool.left.mm,
        )
        for spool in rack.spools
    )


def supplies_of_diameters(
    diameters: Iterable[Diameter], material: str, tippet: Tippet
) -> tuple[Supply, ...]:
    """Return a strand of the material for each diameter, and of the tippet's own at its size."""
    return tuple(
        Supply(tippet.material or material, diameter, tippet.strength)
        if is_near(diameter, tippet.diameter)
        else Supply(material, diameter)
        for diameter in diameters
    )


def butt_for_line(tip: Diameter, strands: Sequence[Supply], practice: Practice) -> Diameter:
    """Return the diameter nearest to what rule of thumb asks for below a fly line's tip.

    Raises `Refused` where no strand is within what the audit allows.
    """
    low, high = practice.rules["butt and line"].limits
    drawn = (s.diameter for s in strands if practice.materials.find(s.material).drawn)
    fit = [diameter for diameter in drawn if low <= diameter.mm / tip.mm <= high]
    wanted = tip.mm * rules_of_thumb().butt_of_tip
    unit = practice.unit or ("mm" if tip.unit == "mm" else "in")
    if not fit:
        raise refused(
            f"no strand suits a line whose tip is {tip.plain}",
            f"buy one of about {thickness(wanted, unit)} for the butt",
        )
    return min(fit, key=lambda diameter: abs(diameter.mm - wanted))


def named(strand: Supply) -> str:
    """Return a strand in words: `0.017 in hard nylon (Stiff 13)`."""
    words = f"{strand.diameter.plain} {strand.material}"
    return f"{words} ({strand.label})" if strand.label else words


def supplies_for(
    piece: AskedPiece, strands: Sequence[Supply], practice: Practice
) -> tuple[Supply, ...]:
    """Return what a piece whose length is asked for may be cut from.

    Wire serves as the kind that is named, or else as any wire there is.
    """
    fit = [s for s in strands if piece.diameter is None or is_near(s.diameter, piece.diameter)]
    fit = [s for s in fit if piece.strength in (None, s.strength)]
    named_so = [s for s in fit if s.material == piece.material]
    if not named_so and _is_wire(piece.material, practice):
        named_so = [s for s in fit if _is_wire(s.material, practice)]
    return fullest(named_so)


def _is_wire(material: str, practice: Practice) -> bool:
    return "wire" in practice.materials.find(material).kind


def meeting_of(upper: Supply, lower: Supply, practice: Practice) -> Meeting:
    """Return two strands as a knot meets them."""
    find = practice.materials.find
    return Meeting(
        upper=find(upper.material),
        upper_mm=upper.diameter.mm,
        lower=find(lower.material),
        lower_mm=lower.diameter.mm,
    )


def once(of_two: "Callable[[Supply, Supply], T]") -> "Callable[[Supply, Supply], T]":
    """Return a function of two strands that works each pair out once.

    It knows them by identity, since to hash all that a strand is would take longer.
    """
    known: dict[tuple[int, int], tuple[T, Supply, Supply]] = {}

    def found(upper: Supply, lower: Supply) -> T:
        pair = id(upper), id(lower)
        if pair not in known:  # which holds the strands, so that no other gets their identity
            known[pair] = of_two(upper, lower), upper, lower
        return known[pair][0]

    return found


def fullest(strands: Sequence[Supply]) -> tuple[Supply, ...]:
    """Return the strands thickest first; of like ones the one with most left."""
    kept: list[Supply] = []
    for strand in sorted(strands, key=lambda strand: -strand.diameter.mm):
        like = [at for at, other in enumerate(kept) if _alike(strand, other)]
        if not like:
            kept.append(strand)
        elif _left(strand) > _left(kept[like[0]]):
            kept[like[0]] = strand
    return tuple(kept)


def is_near(one: Diameter, other: Diameter) -> bool:
    """Whether two diameters are one but for what print rounds off."""
    return alike(one.mm, other.mm)


def _alike(one: Supply, other: Supply) -> bool:
    return one.material == other.material and is_near(one.diameter, other.diameter)


def _left(strand: Supply) -> Fraction | float:
    return math.inf if strand.left_mm is None else strand.left_mm
