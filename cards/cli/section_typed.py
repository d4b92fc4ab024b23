"""A section as people type it, `46 in .023 hard nylon 25lb`, in; what that says of it out."""

from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.units import (
    Diameter,
    Span,
    Strength,
    parse_diameter,
    parse_span,
    parse_strength,
)
from tagend.cards.practice.practice import Practice
from tagend.cards.tables.quantity_cells import quantity
from tagend.cards.tables.recipe_tables import material_named
from tagend.cards.tables.strand_cells import section_said


class TypedSection(Struct, frozen=True, kw_only=True):
    """What was said of a section; None is left open."""

    length: Span | None = None
    diameter: Diameter | None = None
    strength: Strength | None = None
    material: str | None = None


def typed_section(text: str, unit: ShownUnit, practice: Practice) -> TypedSection:
    """Read a section in any order; a bare length is in the unit. Raises `Refused`."""
    said = section_said(text, {"length": unit, "strength": "lb"}, comma=False)
    return TypedSection(
        length=parse_span(said["length"]) if "length" in said else None,
        diameter=parse_diameter(said["diameter"]) if "diameter" in said else None,
        strength=parse_strength(said["strength"]) if "strength" in said else None,
        material=material_named(said["material"], practice) if "material" in said else None,
    )


def typed_length(text: str, unit: str) -> Span:
    """Read a length, or a range; a bare number is in the unit. Raises `Refused`."""
    return parse_span(quantity(text, "length", unit, comma=False))


def typed_diameter(text: str) -> Diameter:
    """Read a diameter; a bare number in the unit in which it is a strand's. Raises `Refused`."""
    return parse_diameter(quantity(text, "diameter", "", comma=False))
