"""All fields of a code: a recipe in, the text of each from the name to the note out, and back."""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from cfractions import Fraction

from tagend.cards.base.shown_lengths import long_length
from tagend.cards.base.units import parse_length
from tagend.cards.code.code_escapes import escape
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.header_code import BELOW_SECTIONS, HEADERS, read_text
from tagend.cards.code.name_code import MEANT
from tagend.cards.code.quantity_code import SILENT, Units, read_units, write_units
from tagend.cards.code.section_code import Terms, read_sections, write_sections
from tagend.cards.practice.knots import Knots
from tagend.cards.practice.materials import Materials
from tagend.cards.recipe.fields import said
from tagend.cards.recipe.recipe import NAME_MOST, SECTIONS_MOST, Butt, Reach, Recipe, Section
from tagend.cards.recipe.recipe_file import checked_whole
from tagend.layouts.base.faults import refused, under

SECTION_START = re.compile(r"[0-9.]")
WORD = re.compile("|".join(HEADERS))


def write_fields(recipe: Recipe, tied: Recipe, terms: Terms) -> Iterator[str]:
    """Yield each field's text; `tied` is the recipe with every knot named.

    NOTATION.md says what the fields mean.
    """
    values = said(recipe) | (said(recipe.reach) if recipe.reach else {})
    if tied.butt != Butt():
        values["butt"] = recipe.butt, tied.butt
    if recipe.total and recipe.total.plain == _sum(recipe.sections):
        values["total"] = None
    headers = {
        word: word + header.write(values[header.of], terms)
        for word, header in HEADERS.items()
        if header.of in values
    }
    below = [headers.pop(word) for word in BELOW_SECTIONS if word in headers]
    yield escape(recipe.name)
    if terms.units != SILENT:
        yield write_units(terms.units)
    yield from (*headers.values(), *write_sections(recipe, tied, terms), *below)


def read_fields(
    fields: Sequence[Cursor], knots: Knots, materials: Materials, *, as_above: bool, as_tied: bool
) -> Recipe:
    """Read `fields = name {":" (units | header | section)}`, each header once.

    The fields come in capitals and with single spaces. Raises `Refused` at the first character
    that cannot be used.
    """
    name, *rest = fields
    name.what = "name"
    units, headers, written_sections = _sorted(rest)
    terms = Terms(units, knots, materials, as_above, as_tied)
    sections, fly = read_sections(written_sections, terms)
    whole = read_text(name, NAME_MOST)
    values = {HEADERS[word].of: _value(word, headers[word], terms) for word in headers}
    if "total" in values and values["total"] is None:
        with under("TOTAL"):
            values["total"] = parse_length(_sum(sections))
    return checked_whole(
        Recipe(name=whole, sections=sections, fly=fly, reach=_reach(values), **values)
    )


def _sorted(fields: Sequence[Cursor]) -> tuple[Units, dict[str, Cursor], list[Cursor]]:
    """Return the units, the values of the headers by their word, and the sections."""
    units: Units | None = None
    headers: dict[str, Cursor] = {}
    sections: list[Cursor] = []
    for spaced in fields:
        field = spaced.only(MEANT)
        if SECTION_START.match(field.text):
            field.what = f"section {len(sections) + 1}"
            sections.append(field)
        elif units is None and (found := read_units(field)):
            units = found
            field.end()
        else:
            word = _word(field, headers)
            headers[word] = _behind(word, spaced) if HEADERS[word].in_words else field
            headers[word].what = word
    if not 1 <= len(sections) <= SECTIONS_MOST:
        raise refused(f"there are {len(sections)} sections", f"write 1 to {SECTIONS_MOST}")
    return units or SILENT, headers, sections


def _word(field: Cursor, known: Mapping[str, object]) -> str:
    """Read the word of `header = word value`, which is not among the known."""
    word = field.take(WORD)
    if word is None:
        found = f"{field.rest[:8]!r} is no field"
        raise field.fault(found, f"the fields are: {', '.join(HEADERS)}")
    if word[0] in known:
        raise field.fault(f"{word[0]} is written twice", "leave one out", word.start())
    return word[0]


def _behind(word: str, spaced: Cursor) -> Cursor:
    """Return the cursor of a text, with its spaces, behind its word."""
    if not spaced.takes(word):
        raise spaced.fault(f"spaces part the letters of {word}", "leave them out")
    return spaced


def _value(word: str, field: Cursor, terms: Terms) -> Any:
    """Return the value of a header that nothing may follow."""
    value = HEADERS[word].read(field, terms)
    field.end()
    return value


def _sum(sections: Sequence[Section]) -> str:
    """Return the length of all sections, each at its longest, as people say it."""
    longest = [section.length.high for section in sections]
    mm = sum((length.mm for length in longest), start=Fraction(0))
    return long_length(mm, "in" if longest[0].in_inches else "cm")


def _reach(values: dict[str, Any]) -> Reach | None:
    """Return the reach that `"OUT" length` and `"ROD" length` give together, out of the values."""
    parts = {name: values.pop(name) for name in ("line_out", "rod") if name in values}
    if len(parts) == 1:
        raise refused("OUT and ROD stand together", "write the other too, or neither", "OUT, ROD")
    return Reach(**parts) if parts else None
