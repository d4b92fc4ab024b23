"""The fields of a code read: a cursor over each in, a recipe out."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from functools import partial
from typing import NamedTuple, TypeVar

from tagend.cards.base.units import Length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.code.code_escapes import unescape
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.name_code import MEANT
from tagend.cards.code.notation_section import read_knot, read_section
from tagend.cards.code.notation_terms import Terms
from tagend.cards.code.quantity_code import SILENT, Units, read_diameter, read_length, read_units
from tagend.cards.practice.knots import Knots
from tagend.cards.practice.materials import Materials
from tagend.cards.recipe.fields import FIELDS
from tagend.cards.recipe.recipe import (
    NAME_MOST,
    NOTE_MOST,
    SECTIONS_MOST,
    Butt,
    Fly,
    Reach,
    Recipe,
    Section,
)
from tagend.cards.recipe.recipe_file import checked_whole
from tagend.layouts.base.faults import Refused, refused

T = TypeVar("T")

SECTION_START = re.compile(r"[0-9.]")
_TEXT_KEYS = ("USE", "NOTE")
# Those of the whole leader; a word of a section stands behind a stroke in it.
_KEYS = tuple(
    dict.fromkeys(
        field.code for cls in (Recipe, Butt, Reach) for field in FIELDS[cls] if field.code
    )
)
KEY = re.compile("|".join(_KEYS))  # no key begins with another
_SPACE = re.compile(" ?")
_DIGITS = re.compile(r"\d+")
_LINE_WEIGHTS = range(1, 16)
_DATE = re.compile(r"\d{4}-\d\d-\d\d")


class _Fields(NamedTuple):
    units: Units
    headers: dict[str, Cursor]  # by key
    sections: list[Cursor]


def read_fields(fields: Sequence[Cursor], knots: Knots, materials: Materials) -> Recipe:
    """Read `fields = name {":" (units | header | section)}`, each header once.

    The fields come in capitals and with single spaces. Raises `Refused` at the first character
    that cannot be used.
    """
    name, *rest = fields
    name.what = "name"
    units, headers, written_sections = _sorted(rest)
    terms = Terms(units, knots, materials)
    sections, fly = _read_sections(written_sections, terms)
    length = partial(read_length, unit=units.length)
    note = partial(_read_text, most=NOTE_MOST)
    recipe = Recipe(
        name=_read_text(name, most=NAME_MOST),
        sections=sections,
        lengths="cut" if _flag(headers, "CUT") else "finished",
        use=_value(headers, "USE", note),
        line_weight=_value(headers, "W", _read_line_weight),
        line_tip=_value(headers, "TIP", partial(read_diameter, unit=units.diameter)),
        total=_value(headers, "TOTAL", length),
        note=_value(headers, "NOTE", note),
        tied=_value(headers, "TIED", _read_date),
        record_lengths=_flag(headers, "RECORD"),
        butt=_value(headers, "BUTT", partial(_read_butt, terms=terms)) or Butt(),
        fly=fly,
        reach=_reach(_value(headers, "OUT", length), _value(headers, "ROD", length)),
    )
    return checked_whole(recipe)


def _sorted(fields: Sequence[Cursor]) -> _Fields:
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
            _add_header(headers, field, spaced)
    if not 1 <= len(sections) <= SECTIONS_MOST:
        raise refused(f"there are {len(sections)} sections", f"write 1 to {SECTIONS_MOST}")
    return _Fields(units or SILENT, headers, sections)


def _add_header(headers: dict[str, Cursor], field: Cursor, spaced: Cursor) -> None:
    """Add the value of `header = key value`; texts keep their spaces."""
    key = field.take(KEY)
    if key is None:
        raise field.fault(f"{field.rest[:8]!r} is no field", f"the fields are: {', '.join(_KEYS)}")
    word = key[0]
    if word in headers:
        raise field.fault(f"{word} is written twice", "leave one out", key.start())
    if word in _TEXT_KEYS:
        if not spaced.takes(word):
            raise spaced.fault(f"spaces part the letters of {word}", "leave them out")
        field = spaced
    field.what = word
    headers[word] = field


def _read_sections(fields: Sequence[Cursor], terms: Terms) -> tuple[tuple[Section, ...], Fly]:
    sections: list[Section] = []
    above = None
    for field in fields:
        section = read_section(field, above, terms, last=field is fields[-1])
        sections.append(section)
        above = section.material
    end = sections[-1]
    return (*sections[:-1], replace(end, knot=None)), Fly(knot=end.knot)


def _value(headers: Mapping[str, Cursor], key: str, read: Callable[[Cursor], T]) -> T | None:
    """Return the value of a header that nothing may follow, or none where it is absent."""
    field = headers.get(key)
    if field is None:
        return None
    value = read(field)
    field.end()
    return value


def _flag(headers: Mapping[str, Cursor], key: str) -> bool:
    return _value(headers, key, lambda _: True) or False


def _read_text(cursor: Cursor, most: int) -> str:
    cursor.take(_SPACE)
    try:
        return plain_text(unescape(cursor), most)
    except Refused as refusal:
        (fault,) = refusal.faults
        raise refused(fault.found, fault.instead, fault.where or cursor.what) from None


def _read_line_weight(cursor: Cursor) -> int:
    """Read `"W" 1 to 15`."""
    digits = cursor.take(_DIGITS)
    if digits is None or len(digits[0]) > 2 or int(digits[0]) not in _LINE_WEIGHTS:
        raise cursor.fault("this is no line weight", "write W and 1 to 15")
    return int(digits[0])


def _read_date(cursor: Cursor) -> date:
    """Read `"TIED" year "-" month "-" day`."""
    match = cursor.take(_DATE)
    try:
        return date.fromisoformat(match[0] if match else "")
    except ValueError:
        raise cursor.fault("this is no date", "write it as 2026-05-31") from None


def _read_butt(cursor: Cursor, terms: Terms) -> Butt:
    """Read `"BUTT" (knot | [knot] "*" length)`."""
    bare_loop = cursor.takes("*")
    end = None if bare_loop else read_knot(cursor, terms, "butt")
    loop = bare_loop or cursor.takes("*")
    return Butt(end=end, loop=read_length(cursor, terms.units.length) if loop else None)


def _reach(line_out: Length | None, rod: Length | None) -> Reach | None:
    """Return the reach that `"OUT" length` and `"ROD" length` give together."""
    if line_out is None and rod is None:
        return None
    if line_out is None or rod is None:
        raise refused("OUT and ROD stand together", "write the other too, or neither", "OUT, ROD")
    return Reach(line_out=line_out, rod=rod)
