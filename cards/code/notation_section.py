"""One section of a code read: a cursor over its field in, the section out."""

import re
from dataclasses import replace

from tagend.cards.code.cursor import COMPARE, Cursor
from tagend.cards.code.name_code import read_name
from tagend.cards.code.notation_terms import BARE_END, PARTS, Terms
from tagend.cards.code.quantity_code import read_diameter, read_length, read_span, read_strength
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tagend.cards.practice.practice import knot_at
from tagend.cards.recipe.recipe import Section
from tagend.cards.recipe.vocabulary import EndOf
from tagend.layouts.base.faults import Refused

_TAPER = re.compile(r"-(?=[0-9.])")
_MARK = re.compile("|".join(("DROP", "BOUGHT", *PARTS)))


def read_section(cursor: Cursor, above: str | None, terms: Terms, *, last: bool) -> Section:
    """Read `section = strand ["-" knot] {"/" mark}`, with the knot that follows it.

    `above` is the material of the section above; the knot of the last section ties the fly.
    """
    section = _read_strand(cursor, above, terms)
    if cursor.takes("-"):
        section = replace(section, knot=read_knot(cursor, terms, "fly" if last else "joint"))
    while cursor.takes("/"):
        section = _marked(section, cursor, terms)
    cursor.end()
    return section


def read_knot(cursor: Cursor, terms: Terms, end: EndOf) -> str:
    """Read `knot = name | "NONE"`, the second only at the butt and at the fly.

    Raises `Refused` for a knot that does not serve at this end.
    """
    if end != "joint" and cursor.takes(BARE_END):
        return "none"
    start = cursor.at
    knot = read_name(cursor, terms.knots, load_knots())
    if knot is None:
        raise cursor.fault(f"{cursor.rest[:8]!r} is no knot", COMPARE)
    try:
        return knot_at(terms.knots, knot, end).name
    except Refused as refusal:
        raise cursor.placed(refusal, start) from None


def _read_strand(cursor: Cursor, above: str | None, terms: Terms) -> Section:
    """Read `strand = span "*" diameter ["-" diameter] ["*" material] ["*" strength]`."""
    units = terms.units
    length = read_span(cursor, units.length)
    if not cursor.takes("*"):
        raise cursor.fault(f"{cursor.rest[:8]!r} follows the length", "write * and the diameter")
    diameter = read_diameter(cursor, units.diameter)
    tapers_to = read_diameter(cursor, units.diameter) if cursor.take(_TAPER) else None
    named = strength = None
    if cursor.takes("*"):
        named = read_name(cursor, terms.materials, load_materials())
        if named is None or cursor.takes("*"):
            strength = read_strength(cursor, units.strength)
    material = named or above
    if material is None:
        raise cursor.fault("the first section names no material", "write * and its code")
    return Section(
        length=length,
        diameter=diameter,
        material=material,
        strength=strength,
        tapers_to=tapers_to,
    )


def _marked(section: Section, cursor: Cursor, terms: Terms) -> Section:
    """Read `mark = part | "DROP" length | "BOUGHT"`; each of the three once."""
    start = cursor.at
    mark = cursor.take(_MARK)
    word = mark[0] if mark else ""
    if word in PARTS and section.part is None:
        return replace(section, part=PARTS[word])
    if word == "DROP" and section.dropper is None:
        return replace(section, dropper=read_length(cursor, terms.units.length))
    if word == "BOUGHT" and not section.bought:
        return replace(section, bought=True)
    found = f"{word or cursor.rest[:8]!r} is no further mark of a section"
    raise cursor.fault(found, f"the marks are: {', '.join(PARTS)}, DROP, BOUGHT", start)
