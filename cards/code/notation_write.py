"""The fields of a code: a recipe in, the text of each field from the name to the note out."""

from collections.abc import Iterator

from tagend.cards.base.units import Length
from tagend.cards.code.code_escapes import escape
from tagend.cards.code.name_code import write_name
from tagend.cards.code.notation_terms import BARE_END, PART_WRITTEN, Terms
from tagend.cards.code.quantity_code import SILENT, write_quantity, write_span
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tagend.cards.recipe.recipe import Butt, Recipe, Section


def write_fields(recipe: Recipe, terms: Terms) -> Iterator[str]:
    """Yield each field's text; NOTATION.md says what they mean."""
    yield escape(recipe.name)
    if terms.units != SILENT:
        yield str(terms.units)
    yield from _header(recipe, terms)
    yield from _sections(recipe, terms)
    if recipe.reach:
        yield f"OUT {_length(recipe.reach.line_out, terms)}"
        yield f"ROD {_length(recipe.reach.rod, terms)}"
    if recipe.note:
        yield f"NOTE {escape(recipe.note)}"


def _header(recipe: Recipe, terms: Terms) -> Iterator[str]:
    if recipe.line_weight:
        yield f"W{recipe.line_weight}"
    if recipe.use:
        yield f"USE {escape(recipe.use)}"
    if recipe.line_tip:
        yield f"TIP {write_quantity(recipe.line_tip, terms.units.diameter)}"
    if recipe.total:
        yield f"TOTAL {_length(recipe.total, terms)}"
    if recipe.lengths == "cut":
        yield "CUT"
    if recipe.record_lengths:
        yield "RECORD"
    if recipe.tied:
        yield f"TIED {recipe.tied.isoformat()}"
    if recipe.butt != Butt():
        loop = f"*{_length(recipe.butt.loop, terms)}" if recipe.butt.loop else ""
        yield f"BUTT {_knot(recipe.butt.end, terms)}{loop}"


def _sections(recipe: Recipe, terms: Terms) -> Iterator[str]:
    joints = [*(section.knot for section in recipe.sections[:-1]), recipe.fly.knot]
    above = ""
    for section, joint in zip(recipe.sections, joints, strict=True):
        material = "" if section.material == above else _material(section.material, terms)
        knot = f"-{_knot(joint, terms)}" if joint else ""
        yield _strand(section, material, terms) + knot + _marks(section, terms)
        above = section.material


def _strand(section: Section, material: str, terms: Terms) -> str:
    units = terms.units
    diameter = write_quantity(section.diameter, units.diameter)
    if section.tapers_to:
        diameter += f"-{write_quantity(section.tapers_to, units.diameter)}"
    strength = write_quantity(section.strength, units.strength) if section.strength else ""
    words = (write_span(section.length, units.length), diameter, material, strength)
    return "*".join(word for word in words if word)


def _marks(section: Section, terms: Terms) -> str:
    part = f"/{PART_WRITTEN[section.part]}" if section.part else ""
    dropper = f"/DROP{_length(section.dropper, terms)}" if section.dropper else ""
    return part + dropper + ("/BOUGHT" if section.bought else "")


def _length(length: Length, terms: Terms) -> str:
    return write_quantity(length, terms.units.length)


def _knot(name: str | None, terms: Terms) -> str:
    if name is None:
        return ""
    return BARE_END if name == "none" else write_name(name, terms.knots, load_knots())


def _material(name: str, terms: Terms) -> str:
    return write_name(name, terms.materials, load_materials())
