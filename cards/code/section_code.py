"""The sections of a leader in a code: a section in, `30*.023*HN*25-B` out, and back."""

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.units import Diameter, Length, Strength
from tagend.cards.code.cursor import COMPARE, Cursor
from tagend.cards.code.name_code import read_name, read_told, write_name
from tagend.cards.code.quantity_code import (
    Units,
    read_quantity,
    read_span,
    write_quantity,
    write_span,
)
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knots
from tagend.cards.practice.materials import Materials, load_materials
from tagend.cards.practice.practice import knot_at
from tagend.cards.recipe.recipe import Fly, Part, Recipe, Section
from tagend.cards.recipe.values import BARE
from tagend.cards.recipe.vocabulary import EndOf
from tagend.layouts.base.faults import under

_BARE_END = "NONE"  # longer than any code of a knot
_CHOSEN = "+"  # before a knot that the recipe leaves to the rule
_PARTS: dict[str, Part] = {
    "BUTT": "butt",
    "TAPER": "taper",
    "TIPPET": "tippet",
    "GUARD": "bite guard",
    "SIGHTER": "sighter",
}
_PART_WRITTEN = {part: word for word, part in _PARTS.items()}
_MARKS = (*_PARTS, "DROP", "BOUGHT")
_MARK = re.compile("|".join(_MARKS))
_TAPER = re.compile(r"-(?=[0-9.])")


class Terms(Struct, frozen=True):
    """What the fields of one code go by."""

    units: Units
    knots: Knots
    materials: Materials
    as_above: bool = True  # is a knot that is not written the one above, as from version 2 on?
    as_tied: bool = False  # is a chosen knot named, or left to the rule again?


def write_sections(recipe: Recipe, tied: Recipe, terms: Terms) -> Iterator[str]:
    """Yield the text of each section with the knot that is tied below it.

    One without material or knot has those of the one above.
    """
    above, knot_above, last = "", _CHOSEN, recipe.sections[-1]
    for section, named, knot in zip(recipe.sections, _below(recipe), _below(tied), strict=True):
        joint = write_knot(named, knot, terms, sign="-") or ("" if section is last else _CHOSEN)
        said = "" if joint == knot_above and section is not last else joint
        marks = _write_marks(section, _usual_part(first=not above, last=section is last), terms)
        yield _write_strand(section, above, terms) + said + marks
        above, knot_above = section.material, joint


def _below(recipe: Recipe) -> tuple[str | None, ...]:
    """Return the knot below each section, the last of them at the fly."""
    return (*(section.knot for section in recipe.sections[:-1]), recipe.fly.knot)


def read_sections(fields: Sequence[Cursor], terms: Terms) -> tuple[tuple[Section, ...], Fly]:
    """Return the sections, and the fly with the knot that follows the last of them."""
    sections: list[Section] = []
    above = None
    for field in fields:
        sections.append(_read_section(field, above, terms, last=field is fields[-1]))
        above = sections[-1]
    end = sections[-1]
    return (*sections[:-1], replace(end, knot=None)), Fly(knot=end.knot)


def write_knot(named: str | None, tied: str | None, terms: Terms, *, sign: str = "") -> str:
    """Return the code of a knot or a bare end behind its sign, or of a knot that is only tied."""
    if named == BARE:
        return f"{sign}{_BARE_END}"
    name = named or tied
    if name is None:
        return ""
    return (sign if named else _CHOSEN) + write_name(name, terms.knots, load_knots())


def read_knot(cursor: Cursor, terms: Terms, end: EndOf) -> str | None:
    """Read `knot | "+" [chosen]`; None of a chosen one that is left to the rule again.

        knot = chosen | "NONE"    the second only at the butt and at the fly
        chosen = code | "%" text "%"

    Raises `Refused` for a knot that does not serve at this end.
    """
    if cursor.takes(_CHOSEN):
        told = read_told(cursor, load_knots())
        return told if terms.as_tied else None
    if end != "joint" and cursor.takes(_BARE_END):
        return BARE
    start = cursor.at
    knot = read_name(cursor, terms.knots, load_knots())
    if knot is None:
        raise cursor.fault(f"{cursor.rest[:8]!r} is no knot", COMPARE)
    with under(cursor.where(start)):
        return knot_at(terms.knots, knot.name, end).name


def _write_strand(section: Section, above: str, terms: Terms) -> str:
    units = terms.units
    words = [write_span(section.length, units), write_quantity(section.diameter, units)]
    if section.tapers_to:
        words[-1] += f"-{write_quantity(section.tapers_to, units)}"
    if section.material != above:
        words.append(write_name(section.material, terms.materials, load_materials()))
    if section.strength:
        words.append(write_quantity(section.strength, units))
    return "*".join(words)


def _usual_part(*, first: bool, last: bool) -> Part:
    """Return the part whose name goes without saying."""
    return "tippet" if last else "butt" if first else "taper"


def _write_marks(section: Section, usual: Part, terms: Terms) -> str:
    word = "" if section.part in (None, usual) else _PART_WRITTEN[section.part]
    part = f"/{word}" if section.part else ""
    dropper = f"/DROP{write_quantity(section.dropper, terms.units)}" if section.dropper else ""
    return part + dropper + ("/BOUGHT" if section.bought else "")


def _read_section(cursor: Cursor, above: Section | None, terms: Terms, *, last: bool) -> Section:
    """Read `section = strand ["-" knot | "+" [chosen]] {"/" mark}`; the last ties the fly."""
    section = _read_strand(cursor, above.material if above else None, terms)
    if cursor.takes("-") or cursor.rest.startswith(_CHOSEN):
        section = replace(section, knot=read_knot(cursor, terms, "fly" if last else "joint"))
    elif above and terms.as_above and not last:
        section = replace(section, knot=above.knot)
    while cursor.takes("/"):
        usual = _usual_part(first=above is None, last=last)
        section = _marked(section, usual, cursor, terms)
    cursor.end()
    return section


def _read_strand(cursor: Cursor, above: str | None, terms: Terms) -> Section:
    """Read `strand = span "*" diameter ["-" diameter] ["*" material] ["*" strength]`."""
    units = terms.units
    length = read_span(cursor, units)
    if not cursor.takes("*"):
        raise cursor.fault(f"{cursor.rest[:8]!r} follows the length", "write * and the diameter")
    diameter = read_quantity(cursor, Diameter, units)
    tapers_to = read_quantity(cursor, Diameter, units) if cursor.take(_TAPER) else None
    named = strength = None
    if cursor.takes("*"):
        named = read_name(cursor, terms.materials, load_materials())
        if named is None or cursor.takes("*"):
            strength = read_quantity(cursor, Strength, units)
    material = named.name if named else above
    if material is None:
        raise cursor.fault("the first section names no material", "write * and its code")
    return Section(
        length=length,
        diameter=diameter,
        material=material,
        strength=strength,
        tapers_to=tapers_to,
    )


def _marked(section: Section, usual: Part, cursor: Cursor, terms: Terms) -> Section:
    """Read `mark = [part] | "DROP" length | "BOUGHT"`; each of the three once."""
    start = cursor.at
    if cursor.rest[:1] in ("", "/") and section.part is None:
        return replace(section, part=usual)
    mark = cursor.take(_MARK)
    word = mark[0] if mark else ""
    if word in _PARTS and section.part is None:
        return replace(section, part=_PARTS[word])
    if word == "DROP" and section.dropper is None:
        return replace(section, dropper=read_quantity(cursor, Length, terms.units))
    if word == "BOUGHT" and not section.bought:
        return replace(section, bought=True)
    found = f"{word or cursor.rest[:8]!r} is no further mark of a section"
    raise cursor.fault(found, f"the marks are: {', '.join(_MARKS)}", start)
